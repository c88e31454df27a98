import { describe, expect, it } from "vitest";
import type { Utterance } from "../../src/app/ports.ts";
import { normalise } from "../../src/language/normalise/normalise.ts";
import { TEENS, TENS } from "../../src/language/numbers/numberWords.ts";
import { understand } from "../../src/language/understand/understand.ts";
import { playCase, shortFacts, testContext } from "../app/playCase.ts";
import { compiled } from "./caseGrammars.ts";
import { TEEN_TY_ROWS } from "./teenTyRows.ts";

const open = compiled("case", "open");
const PAIRS = [3, 4, 5, 6, 7, 8, 9].map((n) => [TEENS[n]!, TENS[n]!] as const);
const WORDS = PAIRS.flat();

/** Heard as clearly as can be. */
const spoken = (words: string): Utterance => ({
  by: "listener",
  candidates: [{ words, score: 0 }],
  free: { score: 0, phones: 14 },
  endedAtMs: 0,
});

const isSayable = (said: string): boolean => understand(open, normalise(said)).kind !== "none";
const put = (template: string, word: string): string => template.replace("N", word);

async function outcome(said: string): Promise<string> {
  const { answers } = await playCase([spoken(said)]);
  return answers[0]?.outcome ?? "nothing";
}

describe("a teen or a ty, heard clearly", () => {
  it.each(TEEN_TY_ROWS)("%s: asked back for %s", async (template, listed) => {
    const asked = listed.replace("teens", TEENS.slice(3).join(" ")).replace("tys", TENS.slice(3).join(" ")).split(" ");
    for (const word of WORDS.filter((w) => isSayable(put(template, w)))) {
      const said = put(template, word);
      expect(`${said}: ${await outcome(said)}`).toBe(`${said}: ${asked.includes(word) ? "asked" : "recorded"}`);
    }
  });

  it("is never taken where the other of the pair lies beyond an edge of the protocol", async () => {
    const { confirm } = testContext().protocol;
    for (const [template] of TEEN_TY_ROWS) {
      for (const pair of PAIRS) {
        const sayings = pair.map((word) => put(template, word)).filter(isSayable);
        if (sayings.length < 2) continue;
        const typed = await Promise.all(sayings.map(async (said) => (await playCase([said])).answers[0]));
        const values = typed.map((answer) =>
          (answer?.facts ?? []).flatMap((f) => (f.type === "vital.recorded" ? [f] : [])),
        );
        const [one, other] = values.map((recorded) => recorded.find((f) => /teen$|ty$/.test(f.said.words)));
        if (one === undefined || other === undefined) continue;
        const edges = confirm[one.code]?.actionEdges;
        const band = (value: number) => (edges ?? []).filter((edge) => value >= edge).length;
        if (edges !== undefined && confirm[one.code]?.soundAlike !== "always" && band(one.value) === band(other.value))
          continue;
        for (const said of sayings) expect(`${said}: ${await outcome(said)}`).toBe(`${said}: asked`);
      }
    }
  });

  it("is asked in a form that says both", async () => {
    const { answers } = await playCase([spoken("i c p fifteen"), "one five"]);
    expect(answers[0]).toMatchObject({ outcome: "asked" });
    expect(shortFacts(answers[1]?.facts ?? [])).toBe("closed affirmed, icp 15");
  });
});
