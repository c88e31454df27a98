import type { Fact } from "../../log/facts.ts";
import { AIRWAY_EVENTS, CLOCKS, PHASES } from "../../log/courseWords.ts";
import type { RecordedCase } from "../recordedCase.ts";
import { showLength } from "./times.ts";
import { capital, drugName, fluidName, showDose, showMl } from "./words.ts";

/** A row of the plot: what happened of one kind. `untilMs`: it went on until then, drawn as a bar. */
export type Lane = {
  readonly name: string;
  readonly events: readonly { readonly atMs: number; readonly text: string; readonly untilMs?: number }[];
};

/** A clock that was set, in words: it moves none of the times of the record. */
export const clockChanged = (byMs: number): string =>
  `clock of the device set ${byMs < 0 ? "back" : "forward"} by ${showLength(Math.abs(byMs))}`;

type Event = Lane["events"][number];
type Infusion = Extract<Fact, { readonly type: "infusion.set" }>;

/** An infusion at one rate, until it was changed or stopped; none: it still ran at the end of the record. */
export type Segment = { readonly fact: Infusion; readonly toMs: number | undefined };

/** The stretches in which an infusion ran, in the order of their beginning. */
export function infusionSegments(facts: readonly Fact[]): readonly Segment[] {
  const set = facts.filter((fact) => fact.type === "infusion.set");
  return set
    .map((fact, i) => ({
      fact,
      toMs: set.find((later, j) => j > i && later.drugId === fact.drugId)?.atMs,
    }))
    .filter(({ fact }) => fact.rate.value > 0);
}

function airwayText(fact: Fact): string | undefined {
  switch (fact.type) {
    case "airway.event":
      return AIRWAY_EVENTS[fact.event];
    case "failure.called":
      return "failed airway";
    case "clock.started":
      return `${CLOCKS[fact.clock]} starts`;
    case "clock.stopped":
      return `${CLOCKS[fact.clock]} ends`;
    default:
      return undefined;
  }
}

function courseText(fact: Fact): string | undefined {
  switch (fact.type) {
    case "phase.entered":
      return PHASES[fact.phase];
    case "herniation.recorded":
      return fact.present ? "herniation suspected" : "no herniation";
    case "rescue.started":
      return "rescue starts";
    case "rescue.ended":
      return "rescue ends";
    case "protocol.replaced":
      return "other protocol";
    case "clock.changed":
      return clockChanged(fact.byMs);
    case "device.slept":
      return "device slept";
    default:
      return undefined;
  }
}

/** What was done and what happened, a row for each drug and fluid. Struck entries are left out. */
export function lanesOf({ facts, struckIds, protocol }: RecordedCase, endMs: number): readonly Lane[] {
  const counted = facts.filter(({ id }) => !struckIds.has(id));
  const lanes = new Map<string, { name: string; events: Event[] }>();
  const put = (key: string, name: string, event: Event): void => {
    const lane = lanes.get(key);
    if (lane === undefined) lanes.set(key, { name, events: [event] });
    else lane.events.push(event);
  };
  for (const fact of counted) {
    const { atMs } = fact;
    if (fact.type === "drug.given")
      put(`d ${fact.drugId}`, capital(drugName(protocol, fact.drugId)), { atMs, text: showDose(fact.amount) });
    if (fact.type === "fluid.given")
      put(`f ${fact.fluidId}`, capital(fluidName(protocol, fact.fluidId)), { atMs, text: showMl(fact.volumeMl) });
  }
  for (const { fact, toMs = endMs } of infusionSegments(counted))
    put(`i ${fact.drugId}`, capital(drugName(protocol, fact.drugId)), {
      atMs: fact.atMs,
      untilMs: toMs,
      text: showDose(fact.rate),
    });
  for (const [name, textOf] of [
    ["Airway", airwayText],
    ["Course", courseText],
  ] as const)
    for (const fact of counted) {
      const text = textOf(fact);
      if (text !== undefined) put(name, name, { atMs: fact.atMs, text });
    }
  return [...lanes.values()];
}
