import { describe, expect, it } from "vitest";
import { ANSWER_CASES } from "./answerRows.ts";
import { CASES } from "./caseRows.ts";
import { playCase, shortFacts } from "./playCase.ts";

describe("cases, line by line", () => {
  it.each(Object.entries({ ...CASES, ...ANSWER_CASES }))("%s", async (_name, rows) => {
    const { answers } = await playCase(rows.map(([said]) => said));
    const played = answers.map((a) => [a.heard, a.outcome, shortFacts(a.facts), a.reply]);
    expect(played).toEqual(rows.map((row) => [...row]));
  });
});
