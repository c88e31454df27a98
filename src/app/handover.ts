import { selectHandover } from "../export/handover/selectHandover.ts";
import type { HandoverHow } from "../language/careIntent.ts";
import { handoverLines, type HandoverContext } from "../language/sentences/handover.ts";
import {
  fitHandover,
  MORE,
  shownRows,
  spokenParts,
  totalS,
  type HandoverLength,
  type HandoverLines,
  type HandoverPart,
  type HandoverRow,
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

/** A handover that was begun: what is said of it, and how far it came. It need not outlive a reload. */
export type HandoverTalk = {
  readonly how: Exclude<HandoverHow, "goOn">;
  readonly parts: readonly HandoverPart[];
  /** Keys of what was said in full before these parts. */
  readonly saidBefore: readonly string[];
  /** The part that was begun last; -1: none yet. */
  readonly at: number;
  /** The fact by which that part began to sound. */
  readonly startedId: string | undefined;
  /** It was said to its end. */
  readonly isEnded: boolean;
  /** Nothing else was asked for since. */
  readonly isShown: boolean;
};

const LENGTHS: Readonly<Record<Exclude<HandoverHow, "goOn">, HandoverLength>> = {
  usual: { withinS: 30, isBrief: false },
  short: { withinS: 12, isBrief: true },
  all: { withinS: Infinity, isBrief: false },
};

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

const fresh = (
  how: HandoverTalk["how"],
  parts: readonly HandoverPart[],
  saidBefore: readonly string[],
): HandoverTalk => ({ how, parts, saidBefore, at: -1, startedId: undefined, isEnded: false, isShown: true });

/** So long what was just said to be "just now" may still be said so. This project's choice. */
const SAME_AGE_S = 30;

/** What takes long is told with the ages that it will have when it is said. */
function asTheySound(tell: (afterS: number) => readonly HandoverPart[]): readonly HandoverPart[] {
  const parts = tell(0);
  return parts.map((part, i) => {
    const afterS = SAME_AGE_S * Math.floor(totalS(parts.slice(0, i)) / SAME_AGE_S);
    return (afterS === 0 ? undefined : tell(afterS).find(({ key }) => key === part.key)) ?? part;
  });
}

/**
 * From the sentence in which it was cut off; or what did not fit; nothing where all was said. In full, and with the numbers
 * and ages of now: the old words may be untrue.
 */
function remaining(before: HandoverTalk, protocol: Protocol, log: CaseState, nowMs: number): HandoverTalk | undefined {
  const structure = protocol.handover.structure.value;
  const { how } = before;
  const done = before.parts.slice(0, Math.max(0, before.isEnded ? before.at + 1 : before.at));
  const said = [...before.saidBefore, ...done.filter(({ level }) => level === 0).map(({ key }) => key)];
  const left = before.parts.slice(done.length);
  const linesAfter = (afterS: number, isBrief: boolean): HandoverLines =>
    handoverLines(contextOf(protocol, log, nowMs + afterS * 1000), spokenPen(protocol.region), isBrief);
  const planned = asTheySound((afterS) =>
    spokenParts(structure, linesAfter(afterS, how === "short"), ({ key }) =>
      left.some((part) => part.key === key) ? 0 : undefined,
    ),
  );
  const isSaid = (key: string): boolean => said.includes(key);
  if (planned.length > 0) {
    const isPlanned = (key: string): boolean => planned.some((part) => part.key === key);
    const rest = spokenParts(structure, linesAfter(0, false), ({ key }) =>
      isSaid(key) || isPlanned(key) ? undefined : 0,
    );
    return fresh(how, rest.length > 0 ? [...planned, MORE] : planned, said);
  }
  const rest = asTheySound((afterS) =>
    spokenParts(structure, linesAfter(afterS, false), ({ key }) => (isSaid(key) ? undefined : 0)),
  );
  return rest.length > 0 ? fresh("all", rest, said) : undefined;
}

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

/** It can be gone on with whatever was asked for since. */
export function nextHandover(
  before: HandoverTalk | undefined,
  { outcome, reply }: Decision,
  told: ToldHandover | undefined,
): HandoverTalk | undefined {
  const next = told?.talk ?? before;
  const isElse = told === undefined && outcome === "answered" && reply.kind !== "words";
  return next && { ...next, isShown: !isElse && (next.isShown || told !== undefined) };
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
    const talk = remaining(before, protocol, log, nowMs);
    return talk === undefined ? { lead: "That was all.", talk: before } : { lead: "Going on.", talk };
  }
  const parts = asTheySound((afterS) => {
    const context = contextOf(protocol, log, nowMs + afterS * 1000);
    const lines = handoverLines(context, spokenPen(protocol.region), how === "short");
    return fitHandover(protocol.handover.structure.value, lines, LENGTHS[how]);
  });
  return { lead: undefined, talk: fresh(how, parts, []) };
}

/** How far it came, by what our voice has begun to say. */
export function followHandover(talk: HandoverTalk | undefined, [fact]: readonly Fact[]): HandoverTalk | undefined {
  if (talk === undefined || fact?.type !== "speech.started") return talk;
  const at = talk.parts.findIndex(({ text }) => text === fact.text);
  return at < 0 ? talk : { ...talk, at, startedId: fact.id, isEnded: false };
}

/** The words that this fact tells of were said to their end. */
export const endPart = (talk: HandoverTalk | undefined, startedId: string): HandoverTalk | undefined =>
  talk?.startedId === startedId ? { ...talk, isEnded: true } : talk;

/** What "say again" repeats while it is spoken: the part that has just begun. */
export const sayAgainOf = (talk: HandoverTalk | undefined, before: HandoverTalk | undefined): string | undefined =>
  talk?.startedId === before?.startedId ? undefined : talk?.parts[talk.at]?.text;

/** Every part in printed words, for the screen. */
export const showHandover = (protocol: Protocol, log: CaseState, nowMs: number): readonly HandoverRow[] =>
  shownRows(
    protocol.handover.structure.value,
    handoverLines(contextOf(protocol, log, nowMs), printedPen(protocol.region), false),
  );
