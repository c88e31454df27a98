import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { freshState, type AppState } from "../../src/app/context.ts";
import { takeUtterance } from "../../src/app/takeTurn.ts";
import { emptyCase } from "../../src/log/caseState.ts";
import type { Fact } from "../../src/log/facts.ts";
import { reduceFacts } from "../../src/log/reduceFact.ts";
import { playCase, testContext } from "./playCase.ts";

/** What is said, line by line, and the last reply. */
const ROWS: readonly (readonly [string, readonly string[], string, string])[] = [
  [
    "the newest of that value is named with its age",
    ["icp five zero", "[2:00] icp one five", "[12:00] strike the icp of fifty"],
    "asked",
    "ICP fifty, five zero, twelve minutes ago. Strike it?",
  ],
  [
    "affirmed, it says what counts now",
    ["icp one five", "[2:00] icp twenty two", "[5:00] strike the icp", "affirm"],
    "recorded",
    "Struck: ICP twenty two. Now ICP fifteen, one five, five minutes ago.",
  ],
  ["denied, nothing is struck", ["icp five zero", "strike the icp", "negative"], "answered", "Left as it was."],
  ["nothing of that value", ["icp five zero", "strike the icp of twenty"], "answered", ""],
  ["nothing of that kind", ["map ninety", "strike the icp"], "answered", "No ICP recorded."],
  [
    "corrected, it keeps its time",
    ["icp five zero", "[3:00] correct the icp of fifty to one five", "affirm", "[3:30] how old is the icp"],
    "answered",
    "",
  ],
];

describe("an entry struck or put right minutes later", () => {
  it.each(ROWS)("%s", async (_what, lines, outcome, reply) => {
    const { answers } = await playCase(lines);
    const last = answers.at(-1);
    expect(last?.outcome).toBe(outcome);
    if (reply !== "") expect(last?.reply).toBe(reply);
  });

  it("names what there is where the value was another one", async () => {
    const { answers } = await playCase(["icp five zero", "strike the icp of twenty"]);
    expect(answers.at(-1)?.reply).toMatch(/^No ICP twenty\. Last ICP fifty/u);
  });

  it("gives a corrected value the age of the one it corrects", async () => {
    const { answers } = await playCase([
      "icp five zero",
      "[3:00] correct the icp of fifty to one five",
      "affirm",
      "how old is the icp",
    ]);
    expect(answers.at(-1)?.reply).toMatch(/three minutes/u);
  });
});

const VALUES = ["map", "icp", "heart rate", "sats"] as const;
const context = testContext();

describe("whatever was said before", () => {
  it("a strike that is affirmed takes that one entry away and no other", () => {
    const entry = fc.tuple(fc.constantFrom(...VALUES), fc.integer({ min: 85, max: 99 }));
    fc.assert(
      fc.property(fc.array(entry, { minLength: 1, maxLength: 8 }), fc.nat(), (entries, at) => {
        let state: AppState = freshState(emptyCase);
        let facts: readonly Fact[] = [];
        let nowMs = 0;
        const say = (words: string) => {
          nowMs += 1_000;
          const turn = takeUtterance(
            context,
            state,
            { by: "typed", candidates: [{ words, score: 0 }], endedAtMs: nowMs },
            nowMs,
          );
          state = turn.state;
          facts = [...facts, ...turn.facts];
          return turn.facts;
        };
        for (const [name, value] of entries) {
          say(`${name} ${value}`);
          if (state.log.questions.length > 0) say("affirm");
        }
        const recorded = facts.flatMap((fact) => (fact.type === "vital.recorded" ? [fact] : []));
        const target = recorded[at % Math.max(1, recorded.length)];
        if (target === undefined) return;
        const name = { map: "map", icp: "icp", hr: "heart rate", spo2: "sats" }[target.code as "map"];
        const asked = say(`strike the ${name} of ${target.value}`);
        const standing = recorded.filter(({ code, value }) => code === target.code && value === target.value);
        expect(asked.flatMap((f) => (f.type === "question.asked" ? f.question.acts : []))).toMatchObject([
          { kind: "strike", targetIds: [standing.at(-1)?.id] },
        ]);
        const struck = say("affirm").flatMap((f) => (f.type === "entry.struck" ? f.targetIds : []));
        expect(struck).toEqual([standing.at(-1)?.id]);
        const left = recorded.filter(({ id }) => !struck.includes(id)).map(({ id }) => id);
        const kept = Object.values(reduceFacts(facts).vitals).flatMap((history) => {
          const ids: string[] = [];
          for (let link: typeof history | undefined = history; link !== undefined; link = link.earlier)
            ids.push(link.entry.id);
          return ids;
        });
        expect(kept.toSorted()).toEqual(left.toSorted());
      }),
      { numRuns: 60 },
    );
  });
});
