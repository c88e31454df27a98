import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { freshState, type AppState } from "../../src/app/context.ts";
import { takeTick, takeUtterance, type Turn } from "../../src/app/takeTurn.ts";
import { emptyCase } from "../../src/log/caseState.ts";
import { defaultProtocol as protocol } from "../../src/protocol/defaultProtocol.ts";
import { promptsStanding } from "../../src/rules/promptsDue.ts";
import { testContext } from "../app/playCase.ts";

const context = testContext();
const START_MS = 1_800_000_000_000;

/** Said beside an alert, and by the list: neither is one of these prompts. */
const NOT_OF_RULES = ["pressureOffer", "killers"];

/** What may be said in any order; each is understood by itself. */
const SAYINGS = [
  "map nine five",
  "map seven five",
  "sats nine eight",
  "sats nine one",
  "heart rate nine zero",
  "end tidal three eight",
  "motor five",
  "oxygen on",
  "rocuronium one hundred milligrams given",
  "ketamine one hundred milligrams given",
  "affirm",
  "negative",
  "blade in",
  "out",
  "tube in",
  "tube confirmed",
  "tube out",
  "next phase",
  "phase watch",
  "start rescue",
  "end rescue",
  "cause bleed",
  "left pupil six fixed",
  "hyperventilating",
  "attempt limit two",
  "disregard",
  "stand by",
  "clocks",
] as const;

const cases = fc.array(fc.tuple(fc.constantFrom(...SAYINGS), fc.nat(100)), { minLength: 1, maxLength: 16 });

type Played = { readonly turn: Turn; readonly before: AppState; readonly atMs: number };

/** Every turn of a case: what is said, and a tick each second in between. */
function* played(steps: readonly (readonly [string, number])[]): Generator<Played> {
  let state = freshState(emptyCase);
  let atMs = START_MS;
  for (const [words, waitS] of steps) {
    const utterance = { by: "typed", candidates: [{ words, score: 0 }], endedAtMs: atMs } as const;
    const said = takeUtterance(context, state, utterance, atMs);
    yield { turn: said, before: state, atMs };
    ({ state } = said);
    for (let s = 0; s < waitS; s += 1) {
      atMs += 1000;
      const turn = takeTick(context, state, atMs);
      yield { turn, before: state, atMs };
      ({ state } = turn);
    }
  }
}

const priorityOf = ({ turn }: Played, promptId: string) =>
  turn.announcements.find(({ alertId }) => alertId === `prompt:${promptId}`)?.priority;

describe("prompts, whatever is said in whatever order", () => {
  it("never come again for one occurrence before the interval of their priority, and one of each priority at a time", () => {
    fc.assert(
      fc.property(cases, (steps) => {
        const last = new Map<string, number>();
        for (const one of played(steps)) {
          const said = one.turn.facts.flatMap((f) => (f.type === "prompt.announced" ? [f] : []));
          const ofRules = said.filter(({ promptId }) => !NOT_OF_RULES.includes(promptId) && priorityOf(one, promptId));
          const priorities = ofRules.map(({ promptId }) => priorityOf(one, promptId));
          expect(new Set(priorities).size).toBe(priorities.length);
          for (const { promptId, key } of ofRules) {
            const priority = priorityOf(one, promptId);
            const id = `${promptId} ${key}`;
            const beforeMs = last.get(id);
            last.set(id, one.atMs);
            if (beforeMs === undefined || priority === undefined || priority === "none") continue;
            expect(one.atMs - beforeMs, id).toBeGreaterThanOrEqual(protocol.timers.promptAgainS[priority].value * 1000);
          }
        }
      }),
      { numRuns: 25 },
    );
  });

  it("never ask for a lower pressure, and never ask for one thing while its opposite is asked for", () => {
    fc.assert(
      fc.property(cases, (steps) => {
        for (const { turn } of played(steps)) {
          const text = turn.announcements.map((a) => a.text).join(" ");
          expect(text).not.toMatch(/lower the|too high|over one fifty|reduce/iu);
          const ids = promptsStanding(turn.state.log, protocol, START_MS).map(({ promptId }) => promptId);
          // An attempt that is to stop is not one whose plan has failed already.
          expect(ids.includes("stopAttempt") && ids.includes("attemptLimit")).toBe(false);
        }
      }),
      { numRuns: 12 },
    );
  });

  it("are withdrawn in the turn whose facts answer them", () => {
    fc.assert(
      fc.property(cases, (steps) => {
        for (const { turn, before, atMs } of played(steps)) {
          const idsOf = (state: AppState) => promptsStanding(state.log, protocol, atMs).map(({ promptId }) => promptId);
          const now = idsOf(turn.state);
          const gone = idsOf(before).filter((id) => !now.includes(id));
          expect(turn.withdrawn).toEqual(expect.arrayContaining(gone.map((id) => `prompt:${id}`)));
        }
      }),
      { numRuns: 12 },
    );
  });
});
