import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { normalise } from "../../src/language/normalise/normalise.ts";
import { understand } from "../../src/language/understand/understand.ts";
import { compiled } from "../phrases/caseGrammars.ts";
import { PHRASE_FAMILIES } from "./phrases/families.ts";
import { phrasesOf } from "./phrases/phraseTables.ts";
import { withTables } from "./phrases/writeTables.ts";

const states = (["asked", "askedAfter"] as const).map((rule) => compiled("case", rule));
const rows = PHRASE_FAMILIES.flatMap((family) => family.rows);
/** Endings and units: they are said after something else. */
const NOT_ALONE: readonly string[] = ["any", "after", "shortName"];

describe("the phrase tables of the README", () => {
  it("are those of the grammars: npx tsx tests/foundation/phrases/writeTables.ts writes them anew", async () => {
    const readme = readFileSync(join(import.meta.dirname, "../../README.md"), "utf8");
    expect(await withTables(readme)).toBe(readme);
  });

  const phrases = rows.filter(([, rule]) => !NOT_ALONE.includes(rule)).flatMap(([f, rule]) => phrasesOf(f, rule));
  it.each(phrases)("hold only what is understood: %s", (phrase) => {
    const meanings = states.map((grammar) => understand(grammar, normalise(phrase)).kind);
    expect(meanings.some((kind) => kind !== "none")).toBe(true);
  });
});
