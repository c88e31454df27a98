import type { RecordedCase } from "../recordedCase.ts";
import type { ProtocolMark } from "../../log/facts.ts";
import { protocolStatus } from "../../log/protocolStatus.ts";
import { selectLatest } from "../../log/selectors.ts";
import { markup, type Html, type Piece } from "./html.ts";
import { clockChanged } from "./laneEvents.ts";
import { showLength, type Times } from "./times.ts";
import { capital, NOT_SAVED, REHEARSAL, showVital } from "./words.ts";

const entry = (name: string, value: Piece): Html => markup`<dt>${name}</dt><dd>${value}</dd>`;

const markText = ({ name, version, hash, signedBy }: ProtocolMark): string =>
  [
    `${name}, version ${version}`,
    hash === undefined ? "no hash" : `SHA-256 ${hash}`,
    signedBy === undefined ? "not signed" : `signed by key ${signedBy}`,
  ].join("; ");

/** Who the patient is as far as the record knows: never a name, a number or a date of birth. */
function patientText({ state, protocol }: RecordedCase): string {
  const values = (["age", "weight", "height"] as const).flatMap((code) => {
    const value = selectLatest(state, code);
    return value === undefined ? [] : [showVital(value, protocol)];
  });
  const { sex, cause, herniation } = state;
  return [
    ...values,
    ...(sex === undefined ? [] : [`Sex ${sex.sex}`]),
    protocol.targets.causes.find(({ id }) => id === (cause?.cause ?? "unknown"))?.label,
    ...(herniation === undefined ? [] : [herniation.present ? "Herniation suspected" : "No herniation"]),
  ]
    .filter((part) => part !== undefined)
    .join("; ");
}

/** What a reader must know of the times and the protocol before he reads on. */
function notesOf({ facts, mark, protocol, unsavedIds }: RecordedCase, times: Times, endMs: number): readonly string[] {
  const openedAtMs = facts[0]?.atMs ?? endMs;
  const notes: string[] = [];
  if (unsavedIds.size > 0)
    notes.push(
      `${unsavedIds.size} of ${facts.length} facts could not be saved on the device yet. What they state is marked ${NOT_SAVED}.`,
    );
  for (const fact of facts) {
    if (fact.type === "clock.changed")
      notes.push(`At ${times.time(fact.atMs)}: ${clockChanged(fact.byMs)}. The times of this record run on unmoved.`);
    if (fact.type === "protocol.replaced")
      notes.push(`At ${times.time(fact.atMs)} another protocol took over: ${markText(fact.protocol)}.`);
  }
  const first = facts.find((fact) => fact.type === "case.opened")?.protocol;
  if (first !== undefined && markText(first) !== markText(mark))
    notes.push(
      `The case was opened under ${markText(first)}. Targets are drawn, and sums made, only for the time in which ${protocol.name}, version ${protocol.version}, counted.`,
    );
  if (times.offset(openedAtMs) !== times.offset(endMs))
    notes.push(
      `Local time changed from ${times.offset(openedAtMs)} to ${times.offset(endMs)} during the case; times after the change carry their offset.`,
    );
  return notes;
}

/** The first page's head: which case, whose protocol, the cautions, and what there is to note. */
export function caseHead(recorded: RecordedCase, times: Times, nowMs: number, endMs: number): Html {
  const { label, rehearsal, caseId, facts, protocol, mark } = recorded;
  const openedAtMs = facts[0]?.atMs ?? endMs;
  const notes = notesOf(recorded, times, endMs);
  return markup`<header><h1>Tragus: record of case ${label}</h1>${rehearsal ? markup`<p class="rehearsal">${REHEARSAL}</p>` : undefined}<p class="caution">${protocol.caution}</p><dl>${[
    entry("Case", `${label}; ${caseId}`),
    entry("Opened", times.full(openedAtMs)),
    entry("Last entry", `${times.full(endMs)}, ${showLength(endMs - openedAtMs)} after the opening`),
    entry("Printed", `${times.full(nowMs)}; ${facts.length} facts`),
    entry("Protocol", `${protocol.name}, version ${protocol.version}, ${protocol.date}, ${protocol.owner}`),
    entry("Standing", protocolStatus(protocol.status) || "Approved by its owner."),
    entry("SHA-256", mark.hash ?? "none"),
    entry("Signature", mark.signedBy === undefined ? "not signed" : `signed by key ${mark.signedBy}`),
    entry("Patient", capital(patientText(recorded))),
  ]}</dl>${
    notes.length === 0 ? undefined : markup`<ul class="notes">${notes.map((note) => markup`<li>${note}</li>`)}</ul>`
  }</header>`;
}
