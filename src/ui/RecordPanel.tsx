import type { ChangeEvent, SubmitEvent, SyntheticEvent } from "react";
import { useState } from "react";
import { useStore } from "zustand";
import type { ScreenActions } from "../app/screenView.ts";
import { screenStore } from "./screenStore.ts";

type PanelProps = { readonly actions: ScreenActions };

/** Removes the chosen case for good, so its label is typed first. */
function EraseForm({ eraseText, actions }: PanelProps & { readonly eraseText: string }) {
  const [typed, setTyped] = useState("");
  const erase = (event: SubmitEvent) => {
    event.preventDefault();
    actions.eraseCase(typed);
    setTyped("");
  };
  return (
    <form onSubmit={erase}>
      <label>
        <span>{eraseText}</span>
        <input value={typed} onChange={(event) => setTyped(event.target.value)} autoComplete="off" />
      </label>
      <button type="submit">Erase it</button>
    </form>
  );
}

/** Which case is printed and saved, and cases from files. */
function CaseChoice({ actions }: PanelProps) {
  const { cases, eraseText, notice, failed } = useStore(screenStore, (state) => state.shelf);
  const add = ({ currentTarget: input }: ChangeEvent<HTMLInputElement>) => {
    const [file] = input.files ?? [];
    if (file !== undefined) actions.addRecord(file);
    input.value = "";
  };
  return (
    <div className="record-cases">
      <label>
        <span>Case</span>
        <select
          value={cases.find(({ chosen }) => chosen)?.caseId}
          onChange={({ currentTarget }) => actions.chooseCase(currentTarget.value)}
        >
          {cases.map(({ caseId, text }) => (
            <option key={caseId} value={caseId}>
              {text}
            </option>
          ))}
        </select>
      </label>
      <label className="protocol-choose">
        <span>Add a case from JSON</span>
        <input type="file" accept="application/json,.json" onChange={add} />
      </label>
      {eraseText !== undefined && <EraseForm eraseText={eraseText} actions={actions} />}
      <p role="status" className={failed ? "record-failed" : undefined}>
        {notice}
      </p>
    </div>
  );
}

/** The cases on this device, the ways in which they leave it, and what came of the last one. Closed until it is wanted. */
export function RecordPanel({ actions }: PanelProps) {
  const record = useStore(screenStore, (state) => state.record);
  if (record === undefined) return null;
  const list = ({ currentTarget }: SyntheticEvent<HTMLDetailsElement>) => {
    if (currentTarget.open) actions.listCases();
    // What is printed while nobody sees which case is chosen is the open one.
    else actions.chooseCase(undefined);
  };
  return (
    <details className="settings" onToggle={list}>
      <summary>Record</summary>
      <CaseChoice actions={actions} />
      <div className="record-out">
        <button type="button" onClick={() => actions.printRecord()}>
          Print the record
        </button>
        {record.exports.map(({ kind, label }) => (
          <button key={kind} type="button" onClick={() => actions.exportRecord(kind)}>
            {label}
          </button>
        ))}
      </div>
      <p>{record.caution}</p>
      <p role="status" className={record.failed ? "record-failed" : undefined}>
        {record.notice}
      </p>
    </details>
  );
}
