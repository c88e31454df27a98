import { describe, expect, it } from "vitest";
import { normalise } from "../../src/language/normalise/normalise.ts";
import { understand } from "../../src/language/understand/understand.ts";
import { defaultProtocol } from "../../src/protocol/defaultProtocol.ts";
import { compiled, GRAMMAR_SOURCES } from "./caseGrammars.ts";
import { meantText } from "./meantText.ts";

const open = compiled("case", "open");
const { drugs, osmotics } = defaultProtocol;
const medicines = [...drugs, ...osmotics];
const SPOKEN = medicines.flatMap(({ id, spoken }) => spoken.map((name) => [name, id] as const));

describe("every name that the protocol gives a drug can be said", () => {
  it.each(SPOKEN)("%s", (name, id) => {
    expect(meantText(understand(open, normalise(`dose of ${name}`)))).toBe(`dose ${id}`);
  });

  it.each(drugs.flatMap(({ id, names }) => [names.international, names.us].map((name) => [name, id] as const)))(
    "as printed: %s",
    (name, id) => {
      expect(meantText(understand(open, normalise(`dose of ${name}`)))).toBe(`dose ${id}`);
    },
  );
});

it("the grammar names no drug that the protocol does not have", () => {
  const tagged = [...(GRAMMAR_SOURCES["drugs"] ?? "").matchAll(/\{drug=([^}]+)\}/gu)].map((m) => m[1]);
  expect(new Set(tagged)).toEqual(new Set(medicines.map(({ id }) => id)));
});
