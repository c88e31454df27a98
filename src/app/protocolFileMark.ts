import type { CaseState } from "../log/caseState.ts";
import type { Fact, NewFact, ProtocolMark } from "../log/facts.ts";
import { sayProtocolReplaced, sayProtocolStatus } from "../language/sentences/protocol.ts";
import type { Protocol } from "../protocol/protocol.ts";
import type { Announcement } from "./announcement.ts";

/** Of a case that is to be opened: its id, what it is called aloud, and whether there is a patient. */
export type NewCase = Pick<Extract<NewFact, { readonly type: "case.opened" }>, "caseId" | "label" | "rehearsal">;

/** The protocol that the facts so far were decided on. */
function lastMark(facts: readonly Fact[]): ProtocolMark | undefined {
  const marks = facts.flatMap((f) => (f.type === "case.opened" || f.type === "protocol.replaced" ? [f.protocol] : []));
  return marks.at(-1);
}

export const isSameMark = (a: ProtocolMark | undefined, b: ProtocolMark): boolean =>
  a?.hash === b.hash && a?.signedBy === b.signedBy && a?.name === b.name && a?.version === b.version;

/** What goes into the record before anything else, now that this protocol counts; nothing where it counted before. */
export function firstFacts(stored: readonly Fact[], mark: ProtocolMark, opening: NewCase): readonly NewFact[] {
  if (stored.length === 0) return [{ type: "case.opened", ...opening, protocol: mark }];
  return isSameMark(lastMark(stored), mark) ? [] : [{ type: "protocol.replaced", protocol: mark }];
}

/** Another protocol counts: the alerts that it does not know are over. */
export function replacingFacts({ alerts }: CaseState, protocol: Protocol, mark: ProtocolMark): readonly NewFact[] {
  const orphans = Object.keys(alerts).filter((alertId) => !protocol.alerts.some(({ id }) => id === alertId));
  return [
    { type: "protocol.replaced", protocol: mark },
    ...orphans.map((alertId): NewFact => ({ type: "alert.cleared", alertId })),
  ];
}

/** Kept in the voice queue until it has been said: a reply does not take its place. */
export function announceProtocol(protocol: Protocol, isReplaced: boolean): readonly Announcement[] {
  const text = isReplaced ? sayProtocolReplaced(protocol) : sayProtocolStatus(protocol);
  return text === "" ? [] : [{ text, priority: "none", alertId: "protocol" }];
}
