import { beforeAll, describe, expect, inject, it } from "vitest";
import { killBrowsers, type CrashTally } from "./crashRun.ts";
import { buildCrashPage } from "./crashServer.ts";
import type { CrashFault } from "./judgeFound.ts";

// What the kill of a program can show, and what it cannot: see "Crash test" in DEVELOPERS.md.

const KILLS = 200;
/** Enough for a store that is spoilt to be noticed whatever the moment: each kill in the middle of writing shows it. */
const KILLS_OF_SPOILT = 8;
const SEED = 20_261_130;
const LIMIT_MS = 900_000;

let script: string;
beforeAll(async () => {
  script = await buildCrashPage();
});

describe(`${KILLS} kills of a browser that writes facts`, () => {
  let tally: CrashTally;
  beforeAll(async () => {
    tally = await killBrowsers({ browserPath: inject("browserPath"), script, kills: KILLS, seed: SEED });
    console.log(JSON.stringify({ ...tally, faults: tally.faults.length }));
  }, LIMIT_MS);

  const faults = (...kinds: readonly CrashFault["kind"][]): readonly CrashFault[] =>
    tally.faults.filter(({ kind }) => kinds.includes(kind));

  it("lose no fact of which the page has said that it is saved", () => {
    expect(faults("lost")).toEqual([]);
  });

  it("leave all facts of a turn or none, as they were given", () => {
    expect(faults("torn", "altered")).toEqual([]);
  });

  it("leave them in their order, without a gap", () => {
    expect(faults("order")).toEqual([]);
  });

  it("leave the chain whole", () => {
    expect(faults("chain")).toEqual([]);
  });

  it("leave a store that opens, and gives back what lies in it", () => {
    expect(faults("load")).toEqual([]);
  });

  // Otherwise the tests above would hold of nothing.
  it("were all judged, and struck in every part of a launch", () => {
    const { starting, loading, writing } = tally.kills;
    expect(starting + loading + writing).toBe(KILLS);
    expect(starting).toBeGreaterThanOrEqual(5);
    expect(loading).toBeGreaterThanOrEqual(1);
    expect(writing).toBeGreaterThanOrEqual(KILLS / 2);
    expect(tally.acknowledged).toBeGreaterThanOrEqual(KILLS);
    expect(tally.unacknowledged).toBeGreaterThanOrEqual(1);
  });
});

describe("a store that is spoilt on purpose is noticed", () => {
  it.each([
    ["that says saved before the commit", "early", "lost"],
    ["that writes each fact of a turn by itself", "apart", "torn"],
  ] as const)(
    "one %s",
    async (_what, spoil, kind) => {
      const options = { browserPath: inject("browserPath"), script, kills: KILLS_OF_SPOILT, seed: SEED, spoil };
      const { faults } = await killBrowsers(options);
      expect(faults.map((fault) => fault.kind)).toContain(kind);
    },
    LIMIT_MS,
  );
});
