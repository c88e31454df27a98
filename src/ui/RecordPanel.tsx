import { useStore } from "zustand";
import type { ScreenActions } from "../app/screenView.ts";
import { screenStore } from "./screenStore.ts";

/** The ways in which the record leaves the device, and what came of the last one. Closed until it is wanted. */
export function RecordPanel({ actions }: { readonly actions: ScreenActions }) {
  const record = useStore(screenStore, (state) => state.record);
  if (record === undefined) return null;
  return (
    <details className="settings">
      <summary>Record</summary>
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
