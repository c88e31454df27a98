import fc from "fast-check";
import type { AirwayEvent } from "../../../src/log/careFacts.ts";
import type { VitalCode } from "../../../src/core/vitals.ts";
import { airway, announced, BuiltCase, given, infusion } from "./builtCase.ts";

/** Something that is done to a case; `pick` chooses among what is there. */
export type Move = { readonly afterS: number; readonly kind: string; readonly pick: number };

const EVENTS: readonly AirwayEvent[] = ["bladeIn", "out", "tubeIn", "tubeConfirmed", "tubeOut"];
const VITALS: readonly (readonly [VitalCode, number, number])[] = [
  ["sbp", 50, 180],
  ["dbp", 30, 90],
  ["map", 40, 130],
  ["icp", 0, 60],
  ["spo2", 60, 100],
  ["etco2", 10, 60],
  ["age", 1, 90],
];

const vital = (b: BuiltCase, pick: number): void => {
  const [code, low, high] = VITALS[pick % VITALS.length] ?? ["sbp", 90, 90];
  b.say({ [code]: low + (pick % (high - low + 1)) });
};

const DO: Readonly<Record<string, (b: BuiltCase, pick: number) => unknown>> = {
  vital,
  both: (b, pick) => b.say({ map: 50 + (pick % 70), icp: pick % 40 }),
  airway: (b, pick) => b.add(airway(EVENTS[pick % EVENTS.length] ?? "out")),
  drug: (b, pick) => b.add(given(pick % 2 === 0 ? "induction" : "muscleRelaxant")),
  infusion: (b, pick) => b.add(infusion("benzodiazepine", pick % 3)),
  herniation: (b, pick) => b.patient({ herniation: pick % 2 === 0 }),
  over: (b) => b.add(announced("rescueOver", String(b.state.herniation?.seq))),
  step: (b, pick) => b.answer(`step${pick % 4}`, pick % 2 === 0 ? "waived" : "done"),
  strike: (b, pick) => b.strike(b.facts[pick % Math.max(1, b.facts.length)]?.id ?? "none"),
  alert: (b, pick) => b.add({ type: "alert.raised", alertId: "any", priority: "low", value: pick }),
};

export const moves: fc.Arbitrary<readonly Move[]> = fc.array(
  fc.record({
    afterS: fc.constantFrom(0, 1, 30, 120, 300, 600, 601, 1500),
    kind: fc.oneof(
      { weight: 6, arbitrary: fc.constant("vital") },
      { weight: 6, arbitrary: fc.constantFrom(...Object.keys(DO)) },
    ),
    pick: fc.nat(100_000),
  }),
  { minLength: 1, maxLength: 40, size: "max" },
);

/** The case after these moves. `before` is called with the number of each move before it is made. */
export function play(all: readonly Move[], before: (b: BuiltCase, move: number) => void = () => undefined): BuiltCase {
  const b = new BuiltCase();
  let seconds = 0;
  all.forEach(({ afterS, kind, pick }, i) => {
    before(b, i);
    b.at((seconds += afterS));
    DO[kind]?.(b, pick);
  });
  return b;
}
