import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { freshState, type AppContext, type AppState } from "../../src/app/context.ts";
import { takeUtterance } from "../../src/app/takeTurn.ts";
import { viewTargets } from "../../src/app/view/targets.ts";
import { viewTiles } from "../../src/app/view/tiles.ts";
import { emptyCase } from "../../src/log/caseState.ts";
import type { Protocol } from "../../src/protocol/protocol.ts";
import { testContext } from "./playCase.ts";

const context = testContext();
const region = { ...context.protocol.region, co2: "kPa", glucose: "mg/dL" } as const;

type Played = { readonly replies: readonly string[]; readonly state: AppState };

/** Plays lines with parts of the protocol changed. */
function play(change: Partial<Protocol>, ...lines: readonly string[]): Played {
  const changed: AppContext = { ...context, protocol: { ...context.protocol, ...change } };
  let state: AppState = freshState(emptyCase);
  const replies = lines.map((words) => {
    const turn = takeUtterance(changed, state, { by: "typed", candidates: [{ words, score: 0 }], endedAtMs: 0 }, 0);
    state = turn.state;
    return turn.answer?.reply ?? "";
  });
  return { replies, state };
}

const tileText = (change: Partial<Protocol>, { log }: AppState, id: string) =>
  viewTiles(log, { ...context.protocol, ...change }, 0).find((tile) => tile.id === id)?.text;

// 1 kPa is 7.5006 mmHg and 1 mmol/L of glucose 18.016 mg/dL: 38 mmHg is 5.07 kPa, 5.5 mmol/L is 99.1 mg/dL.
describe("where CO2 is given in kilopascals and glucose in milligrams per decilitre", () => {
  it.each([
    ["end tidal five kilopascals", "End tidal five kilopascals.", "etco2", "5.0 kPa"],
    [
      "end tidal 38 mmHg",
      "End tidal five point one kilopascals, from thirty eight millimetres of mercury.",
      "etco2",
      "5.1 kPa",
    ],
    ["glucose 99 mg/dL", "Glucose ninety nine milligrams per decilitre.", "glucose", "99 mg/dL"],
    [
      "glucose 5.5 mmol/L",
      "Glucose ninety nine milligrams per decilitre, from five point five millimoles per litre.",
      "glucose",
      "99 mg/dL",
    ],
    ["icp 22", "ICP twenty two.", "icp", "22 mmHg"],
  ])("%s", (said, reply, id, shown) => {
    const { replies, state } = play({ region }, said);
    expect(replies).toEqual([reply]);
    expect(tileText({ region }, state, id)).toBe(shown);
  });

  it("what is read back, disregarded and struck is said in that unit too", () => {
    const { replies } = play(
      { region },
      "end tidal 5 kPa",
      "read back",
      "correction glucose 99 mg/dL",
      "end tidal 5.2 kPa",
      "disregard",
    );
    expect(replies.slice(1)).toEqual([
      "End tidal five kilopascals.",
      "Glucose ninety nine milligrams per decilitre. End tidal five kilopascals struck.",
      "End tidal five point two kilopascals.",
      "Disregarded: end tidal five point two kilopascals.",
    ]);
  });

  it("the target range is in that unit too", () => {
    const { replies, state } = play({ region }, "herniation suspected");
    expect(replies[0]).toContain("Target: end tidal four to four point seven kilopascals.");
    const lines = viewTargets(state.log, { ...context.protocol, region });
    expect(lines).toContain("SpO2 94 %, EtCO2 4.0 to 4.7 kPa.");
  });

  it("only the way a value is given changes, never the value that is stored", () => {
    const words = fc.oneof(
      fc.integer({ min: 10, max: 90 }).map((n) => `end tidal ${n} mmHg`),
      fc.integer({ min: 20, max: 90 }).map((n) => `end tidal ${n / 10} kPa`),
      fc.integer({ min: 20, max: 400 }).map((n) => `glucose ${n} mg/dL`),
      fc.integer({ min: 20, max: 300 }).map((n) => `glucose ${n / 10} mmol/L`),
    );
    fc.assert(
      fc.property(words, (said) => {
        expect(play({ region }, said).state.log.vitals).toEqual(play({}, said).state.log.vitals);
      }),
    );
  });
});

describe("where the consequence of a pressure is not read back", () => {
  const readBack = { consequence: { ...context.protocol.readBack.consequence, value: false } };

  it.each([
    ["120/80", "Pressure one twenty over eighty."],
    ["map 95", "MAP ninety five."],
    ["120/80 map 95", "Pressure one twenty over eighty, MAP ninety five."],
    ["map 95, icp 22", "MAP ninety five, ICP twenty two."],
  ])("%s", (said, reply) => {
    expect(play({ readBack }, said).replies).toEqual([reply]);
  });

  it("a mean that its pressure contradicts is still told", () => {
    expect(play({ readBack }, "166/86 map 95").replies).toEqual([
      "Pressure one sixty six over eighty six, MAP ninety five. Systolic and diastolic give one thirteen.",
    ]);
  });

  it("status still gives MAP against its target", () => {
    expect(play({ readBack }, "120/80", "status").replies[1]).toMatch(/MAP ninety three, on target/);
  });
});
