import { selectHandover } from "../export/handover/selectHandover.ts";
import type { HandoverHow } from "../language/careIntent.ts";
import { handoverLines, type HandoverContext } from "../language/sentences/handover.ts";
import {
  fitHandover,
  orderedParts,
  type FittedHandover,
  type HandoverPart,
} from "../language/sentences/handoverParts.ts";
import { sentences } from "../language/sentences/sentence.ts";
import { printedPen, spokenPen } from "../language/sentences/handoverPen.ts";
import type { CaseState } from "../log/caseState.ts";
import type { Fact } from "../log/facts.ts";
import { findMedicine } from "../protocol/findMedicine.ts";
import type { Protocol } from "../protocol/protocol.ts";
import type { Decision } from "./decide/decision.ts";
import { isOver } from "../rules/clock.ts";
import { clocksRunning } from "../rules/clocks.ts";
import { findFluid } from "../rules/fluidTotal.ts";
import { infusionEnds } from "../rules/infusionEnd.ts";

/** A handover that was begun: what is to be said, and how far it came. It need not outlive a reload. */
export type HandoverTalk = FittedHandover & {
  /** The part that was begun last; -1: none yet. */
  readonly at: number;
  /** The fact by which that part began to sound. */
  readonly startedId: string | undefined;
  /** It was cut off before its end. */
  readonly isCut: boolean;
};

const WITHIN_S: Readonly<Record<Exclude<HandoverHow, "goOn">, number>> = { usual: 30, short: 12, all: Infinity };

function contextOf(protocol: Protocol, log: CaseState, nowMs: number): HandoverContext {
  const ends = infusionEnds(log, protocol, nowMs);
  const due = clocksRunning(log, protocol, nowMs)
    .filter(
      (clock) =>
        clock.endsAtMs !== undefined && clock.id !== "bag" && !(clock.id === "pushDose" && isOver(clock, nowMs)),
    )
    .toSorted((a, b) => (a.endsAtMs ?? 0) - (b.endsAtMs ?? 0));
  return {
    handover: selectHandover(log, protocol, nowMs),
    nameOf: (id) => findMedicine(protocol, id)?.spokenName ?? findFluid(protocol, id)?.label ?? id,
    emptyAtMs: (drugId) => ends.find((end) => end.drugId === drugId)?.atMs,
    due,
    nowMs,
  };
}

const fresh = (parts: readonly HandoverPart[], rest: readonly HandoverPart[]): HandoverTalk => ({
  parts,
  rest,
  at: -1,
  startedId: undefined,
  isCut: false,
});

/** From where it was cut off, or what did not fit; nothing where all was said. */
function remaining({ parts, rest, at, isCut }: HandoverTalk): HandoverTalk | undefined {
  const left = parts.slice(isCut ? at : at + 1);
  if (left.length > 0) return fresh(left, rest);
  return rest.length > 0 ? fresh(rest, []) : undefined;
}

/** Names the part at which it goes on, where that does not name itself. */
const leadTo = ({ title, text }: HandoverPart): string =>
  title === "" || text.startsWith(title) ? "Going on." : `Going on, ${title}.`;

/** What is said of a handover: the parts one after another, and before them at which one it goes on. */
export type ToldHandover = { readonly lead: string | undefined; readonly talk: HandoverTalk | undefined };

/** What is said one after another, each in one go. */
export const partsOf = ({ lead, talk }: ToldHandover): readonly string[] => [
  ...(lead === undefined ? [] : [lead]),
  ...(talk === undefined || talk.at >= 0 ? [] : talk.parts.map(({ text }) => text)),
];

/** The same, with what else is to be said in this turn. */
export function partsWith(told: ToldHandover, ...others: readonly (string | undefined)[]): readonly string[] {
  const rest = sentences(...others);
  return rest === "" ? partsOf(told) : [...partsOf(told), rest];
}

/** It stays the newest thing asked for until something else is. */
export function nextHandover(
  before: HandoverTalk | undefined,
  { outcome, reply }: Decision,
  told: ToldHandover | undefined,
): HandoverTalk | undefined {
  if (told !== undefined) return told.talk ?? before;
  return outcome === "answered" && reply.kind !== "words" ? undefined : before;
}

export function tellHandover(
  protocol: Protocol,
  log: CaseState,
  how: HandoverHow,
  before: HandoverTalk | undefined,
  nowMs: number,
): ToldHandover {
  if (how === "goOn") {
    if (before === undefined) return { lead: "No handover was begun.", talk: undefined };
    const talk = remaining(before);
    if (talk === undefined) return { lead: "That was all.", talk: before };
    const [next] = talk.parts;
    return { lead: next && leadTo(next), talk };
  }
  const lines = handoverLines(contextOf(protocol, log, nowMs), spokenPen(protocol.region), how === "short");
  const { parts, rest } = fitHandover(protocol.handover.structure.value, lines, WITHIN_S[how]);
  return { lead: undefined, talk: fresh(parts, rest) };
}

/** How far it came, by what our voice has begun to say or was cut off in. */
export function followHandover(talk: HandoverTalk | undefined, [fact]: readonly Fact[]): HandoverTalk | undefined {
  if (talk === undefined || fact === undefined) return talk;
  if (fact.type === "speech.cut") return fact.startedId === talk.startedId ? { ...talk, isCut: true } : talk;
  if (fact.type !== "speech.started") return talk;
  const at = talk.parts.findIndex(({ text }) => text === fact.text);
  return at < 0 ? talk : { ...talk, at, startedId: fact.id, isCut: false };
}

/** What "say again" repeats while it is spoken: the part that has just begun. */
export const sayAgainOf = (talk: HandoverTalk | undefined, before: HandoverTalk | undefined): string | undefined =>
  talk?.startedId === before?.startedId ? undefined : talk?.parts[talk.at]?.text;

/** Every part in printed words, for the screen. */
export const showHandover = (protocol: Protocol, log: CaseState, nowMs: number): readonly HandoverPart[] =>
  orderedParts(
    protocol.handover.structure.value,
    handoverLines(contextOf(protocol, log, nowMs), printedPen(protocol.region), false),
    undefined,
    true,
  );
