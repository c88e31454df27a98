import { describe, expect, it } from "vitest";
import { freshState } from "../../src/app/context.ts";
import type { Utterance } from "../../src/app/ports.ts";
import { takeUtterance } from "../../src/app/takeTurn.ts";
import { OLDEST_EXACT_A } from "../../src/core/age.ts";
import { VITALS } from "../../src/core/vitals.ts";
import { spokenForms } from "../../src/language/numbers/spokenForms.ts";
import { sayDigits } from "../../src/language/sentences/number.ts";
import { emptyCase } from "../../src/log/caseState.ts";
import { testContext } from "./playCase.ts";

const context = testContext();

/** Slots with the span in which both numbers of a pair are possible, and how the value is said. */
const SLOTS = [
  { said: (n: string) => `systolic ${n}`, code: "sbp", from: 100, to: 299 },
  { said: (n: string) => `${n} over fifty two`, code: "sbp", from: 100, to: 299 },
  { said: (n: string) => `heart rate ${n}`, code: "hr", from: 100, to: 260 },
  { said: (n: string) => `map ${n}`, code: "map", from: 100, to: 250 },
  { said: (n: string) => `i c p ${n}`, code: "icp", from: 13, to: 100 },
  { said: (n: string) => `resp rate ${n}`, code: "rr", from: 13, to: 80 },
  { said: (n: string) => `end tidal ${n} millimetres of mercury`, code: "etco2", from: 13, to: 120 },
  { said: (n: string) => `weight ${n} kilos`, code: "weight", from: 13, to: 299 },
  { said: (n: string) => `height ${n} centimetres`, code: "height", from: 113, to: 199 },
  { said: (n: string) => `age ${n}`, code: "age", from: 13, to: 99 },
] as const;

/** The number that a teen, or a ten from thirty up, may be taken for, alone or behind hundreds. */
function otherOf(n: number): number | undefined {
  const rest = n % 100;
  if (rest >= 13 && rest <= 19) return n - rest + (rest - 10) * 10;
  return rest >= 30 && rest % 10 === 0 ? n - rest + rest / 10 + 10 : undefined;
}

const heard = (words: string): Utterance => ({
  by: "listener",
  candidates: [{ words, score: 0 }],
  free: { score: 0, phones: 16 },
  endedAtMs: 0,
});

/** Said digit by digit and affirmed where it is asked back all the same: what is said when it is recorded. */
function readBack(words: string): { readonly reply: string; readonly recorded: readonly number[] } {
  const said = takeUtterance(context, freshState(emptyCase), heard(words), 0);
  const isAsked = said.answer?.outcome === "asked";
  const turn = isAsked ? takeUtterance(context, said.state, heard("affirm"), 1000) : said;
  const recorded = turn.facts.flatMap((f) => (f.type === "vital.recorded" ? [f.value] : []));
  return { reply: turn.answer?.reply ?? "", recorded };
}

describe("every teen and ten of a spoken value is read back with its digits", () => {
  it.each(SLOTS.map((slot) => [slot.said("…"), slot] as const))("%s", (_name, { said, code, from, to }) => {
    const { min, max } = VITALS[code].limits;
    let seen = 0;
    for (let n = from; n <= to; n++) {
      const other = otherOf(n);
      if (other === undefined || other < min || other > max) continue;
      const digits = spokenForms(n, 0).find((form) => form.length === String(n).length && !form.includes("oh")) ?? [];
      const { reply, recorded } = readBack(said(digits.join(" ")));
      if (!recorded.includes(n)) continue;
      seen++;
      // Nobody takes "over eighty nine" for nineteen.
      if (code === "age" && n > OLDEST_EXACT_A) expect(reply).toBe("Age over eighty nine.");
      else expect(reply).toContain(`, ${sayDigits(n)}`);
    }
    expect(seen).toBeGreaterThan(8);
  });
});
