import { beforeAll, describe, expect, it } from "vitest";
import { testContext } from "../app/playCase.ts";
import { judgeRun, mostWithin, unwatched, type Verdict } from "./judge.ts";
import { playSim, type SimRun } from "./playSim.ts";

const context = testContext();
/** No more than this is spoken within ten minutes: the issue that asked for the alerts. */
const MOST_SPOKEN = 6;
const TEN_MINUTES_MS = 600_000;

it("is heard by alerts for all that is to be watched", () => {
  expect(unwatched(context.protocol)).toEqual([]);
});

it("says the same again for the same seed, and something else for another", async () => {
  const [first, again, other] = await Promise.all([4, 4, 7].map((seed) => playSim(context, { seed, hours: 0.4 })));
  expect(again).toEqual(first);
  expect(other!.turns.map(({ said }) => said)).not.toEqual(first!.turns.map(({ said }) => said));
});

describe.each([
  ["a woman with a bleed, ICP measured", 1],
  ["a child, ICP unknown", 2],
])("six hours of %s", (_who, seed) => {
  let run: SimRun;
  let verdict: Verdict;

  beforeAll(async () => {
    run = await playSim(context, { seed, hours: 6 });
    verdict = judgeRun(context.protocol, run);
  }, 120_000);

  it("have much to warn of, and were understood", () => {
    expect(verdict.crossings.length).toBeGreaterThan(15);
    const said = run.turns.filter((turn) => turn.said !== undefined);
    expect(said.filter(({ outcome }) => outcome === "recorded").length).toBeGreaterThan(150);
  });

  it("miss no crossing", () => {
    expect(verdict.missed).toEqual([]);
  });

  it("warn of none late", () => {
    expect(verdict.late).toEqual([]);
  });

  it("take back at once what was said wrong", () => {
    expect(verdict.notTakenBack).toEqual([]);
  });

  it("show everything that stands at every minute", () => {
    expect(verdict.offScreen).toEqual([]);
  });

  it(`hold no more than ${MOST_SPOKEN} spoken alerts in any ten minutes`, () => {
    expect(mostWithin(verdict.spokenAtMs, TEN_MINUTES_MS).most).toBeLessThanOrEqual(MOST_SPOKEN);
  });
});
