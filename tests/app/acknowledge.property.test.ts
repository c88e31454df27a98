import fc from "fast-check";
import { expect, it } from "vitest";
import { freshState } from "../../src/app/context.ts";
import { takeTick, takeUtterance, type Turn } from "../../src/app/takeTurn.ts";
import { emptyCase, type CaseState } from "../../src/log/caseState.ts";
import { acknowledgeable } from "../../src/rules/alerts/acknowledgeable.ts";
import { testContext } from "./playCase.ts";

const context = testContext();

/** Readings on and under target, and the ways to say that they were heard. The rest is time that passes, in seconds. */
const READINGS = ["one ten over sixty", "one thirty two over eighty", "sats eight two", "sats nine six", "icp two two"];
const CAUSES = { pressure: ["heard pressure", "i have the pressure"], oxygen: ["heard sats", "i have the oxygen"] };
const move = fc.oneof(
  { weight: 4, arbitrary: fc.constantFrom(...READINGS) },
  { weight: 3, arbitrary: fc.constantFrom("heard", "i have it", ...CAUSES.pressure, ...CAUSES.oxygen) },
  { weight: 1, arbitrary: fc.constantFrom(1, 30, 70, 200) },
);

const open = (log: CaseState, nowMs: number) => acknowledgeable(log, context.protocol, nowMs);
const idsOf = (all: ReturnType<typeof open>) => all.map(({ alertId, key }) => `${alertId} ${key ?? ""}`);

it("what is acknowledged is what was meant, and nothing beside it", () => {
  let acknowledged = 0;
  fc.assert(
    fc.property(fc.array(move, { minLength: 3, maxLength: 20 }), (moves) => {
      let [state, nowMs] = [freshState(emptyCase), 1_800_000_000_000];
      for (const next of moves) {
        nowMs += typeof next === "number" ? next * 1000 : 1000;
        const before = open(state.log, nowMs);
        const turn: Turn =
          typeof next === "number"
            ? takeTick(context, state, nowMs)
            : takeUtterance(
                context,
                state,
                { by: "typed", candidates: [{ words: next, score: 0 }], endedAtMs: 0 },
                nowMs,
              );
        const said = turn.facts.flatMap((f) =>
          f.type === "alert.acknowledged" ? [`${f.alertId} ${f.key ?? ""}`] : [],
        );
        const cause = (["pressure", "oxygen"] as const).find((one) => CAUSES[one].some((words) => words === next));
        const isBare = next === "heard" || next === "i have it";
        const [newest] = before;
        const together = (one: (typeof before)[number]) =>
          one.cause === newest?.cause && one.saidAtMs === newest.saidAtMs;
        const meant = isBare ? before.filter(together) : before.filter((one) => one.cause === cause);
        expect(said).toEqual(idsOf(meant));
        acknowledged += said.length;
        state = turn.state;
      }
    }),
    { numRuns: 150 },
  );
  expect(acknowledged).toBeGreaterThan(50);
});
