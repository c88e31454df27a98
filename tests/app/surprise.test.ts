import { expect, it } from "vitest";
import { isSurprising } from "../../src/app/surprise.ts";
import { normalise } from "../../src/language/normalise/normalise.ts";
import { understand } from "../../src/language/understand/understand.ts";
import { caseAfter } from "../bench/scoring.ts";
import { testContext } from "./playCase.ts";

const context = testContext();
const START_MS = 1_800_000_000_000;
const READ = ["one twenty over sixty", "heart rate eighty", "sats ninety eight", "end tidal five kilopascals"];

// The protocol asks about a heart rate that jumps by more than 60 within five minutes; EtCO2 by its own limit in mmHg.
it.each([
  ["heart rate eighty five", 60, false],
  ["heart rate one ten", 60, false],
  ["heart rate one eleven", 60, true],
  ["heart rate forty nine", 60, true],
  ["heart rate one eleven", 301, false],
  ["respiratory rate forty", 60, false],
  ["sats eighty", 60, true],
  ["sats ninety eight heart rate one fifty", 60, true],
  ["end tidal five point one kilopascals", 60, false],
  // The mean of 120/60 is 80; the protocol asks about a mean that jumps by more than 45.
  ["map one hundred", 60, false],
  ["map one ten", 60, true],
  ["status", 60, false],
] as const)("%s, %i s later: %s", (words, laterS, expected) => {
  const { log } = caseAfter(context, READ, START_MS);
  const meaning = understand(context.grammars.of("open"), normalise(words));
  if (meaning.kind !== "one") throw new Error(`"${words}" has no single meaning`);
  expect(isSurprising(log, context.protocol, meaning.intent, START_MS + laterS * 1000)).toBe(expected);
});
