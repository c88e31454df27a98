import { describe, expect, it } from "vitest";
import * as bodyMass from "../../src/core/bodyMass.ts";
import * as bodySize from "../../src/core/bodySize.ts";
import { SOURCE_KINDS, type Formula } from "../../src/core/derivation.ts";
import { bodyFormulas } from "../../src/core/formulas/body.ts";
import { neuroFormulas } from "../../src/core/formulas/neuro.ts";
import * as gcs from "../../src/core/gcs.ts";
import * as haematoma from "../../src/core/haematoma.ts";
import * as ichScore from "../../src/core/ichScore.ts";
import * as pupils from "../../src/core/pupils.ts";
import * as tubeSize from "../../src/core/tubeSize.ts";
import * as weightByAge from "../../src/core/weightByAge.ts";

const FUNCTIONS: Readonly<Record<string, unknown>> = {
  ...bodyMass,
  ...bodySize,
  ...gcs,
  ...haematoma,
  ...ichScore,
  ...pupils,
  ...tubeSize,
  ...weightByAge,
};
const ROWS: readonly (readonly [string, Formula])[] = [
  ...Object.entries(bodyFormulas),
  ...Object.entries(neuroFormulas),
];

describe("a formula's row", () => {
  it.each(ROWS)("%s is a function, and says its name, how it computes and what it rests on", (key, formula) => {
    expect(FUNCTIONS[key]).toBeTypeOf("function");
    expect(formula.name).not.toBe("");
    expect(formula.expression).not.toBe("");
    expect(formula.source.reference).not.toBe("");
    expect(SOURCE_KINDS).toContain(formula.source.kind);
  });
  it("is called by no other's name", () => {
    const names = ROWS.map(([, { name }]) => name);
    expect(new Set(names).size).toBe(names.length);
  });
  it("only these numbers were read in the very document that is cited", () => {
    expect(ROWS.filter(([, { source }]) => source.primaryRead).map(([key]) => key)).toEqual([
      "weightByAge",
      "olderWeightByAge",
      "tubeDepthBySize",
      "gcsPupils",
      "pupilReactivityScore",
    ]);
  });
  it("what nobody read is from memory, common practice, or a summary of the document", () => {
    const unread = ROWS.filter(([, { source }]) => !source.primaryRead);
    const summarised = unread.filter(([, { source }]) => !["memory", "common-practice"].includes(source.kind));
    expect(summarised.map(([key]) => key)).toEqual(["tubeSizeByAge", "spareTubes", "ichScore"]);
  });
});
