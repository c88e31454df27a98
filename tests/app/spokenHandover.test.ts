import { basename } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import type { Flite } from "../../src/adapters/voice/synthesise.ts";
import { HANDOVER_STRUCTURES } from "../../src/protocol/handoverStructures.ts";
import { caseScripts, saidIn } from "../cases/script.ts";
import { HandoverCase, STUFFED } from "./handoverCase.ts";
import { loadVoice, secondsOf } from "./handoverSeconds.ts";
import { testContext } from "./playCase.ts";

const WHOLE_S = 30;
const SHORT_S = 12;

const CASES: readonly (readonly [string, readonly string[]])[] = [
  ["nothing was said", []],
  ["one pressure", ["one ten over sixty"]],
  ["stuffed", STUFFED],
  ...caseScripts().map((script) => [basename(script.path, ".txt"), saidIn(script)] as const),
];

let flite: Flite;
beforeAll(async () => {
  flite = await loadVoice();
});

describe.each(CASES)("the handover of a case: %s", (_name, lines) => {
  it("is spoken within its time, and in short within that", () => {
    const told = new HandoverCase(lines);
    expect(secondsOf(flite, told.parts("handover"))).toBeLessThanOrEqual(WHOLE_S);
    expect(secondsOf(flite, told.parts("handover short"))).toBeLessThanOrEqual(SHORT_S);
  });

  it("begins with the lowest pressures, whatever else there is", () => {
    const told = new HandoverCase(lines);
    const { map, sbp } = told.state.log.vitals;
    const first = /^Lowest (?:MAP|systolic) /u;
    for (const words of ["handover", "handover short", "handover all"])
      expect(told.parts(words)[0]).toMatch((map ?? sbp) ? first : /^(?:Lowest|No pressure recorded\.)/u);
  });

  it("says the rest after go on, so that nothing is lost", () => {
    const all = sentencesOf(new HandoverCase(lines).parts("handover all"));
    const told = new HandoverCase(lines);
    const said = sentencesOf(told.parts("handover"));
    if (said.includes("say go on.")) {
      // All of it began to sound, which the record tells.
      const { handover } = told.state;
      told.state = { ...told.state, handover: handover && { ...handover, at: handover.parts.length - 1 } };
      said.push(...sentencesOf(told.parts("go on")));
    }
    expect(all.filter((sentence) => !said.includes(sentence))).toEqual([]);
  });
});

/** Every sentence without the name of its part. */
function sentencesOf(parts: readonly string[]): string[] {
  return parts
    .flatMap((part) => part.split(/(?<=[.?])\s/u))
    .map((s) => s.replace(/^[A-Z][a-z]+: (?=.)/u, "").toLowerCase());
}

it("stays within its time in every structure", () => {
  const context = testContext();
  const { structure } = context.protocol.handover;
  for (const value of HANDOVER_STRUCTURES) {
    const protocol = { ...context.protocol, handover: { structure: { ...structure, value } } };
    const told = new HandoverCase(STUFFED, { ...context, protocol });
    expect(secondsOf(flite, told.parts("handover"))).toBeLessThanOrEqual(WHOLE_S);
    expect(secondsOf(flite, told.parts("handover short"))).toBeLessThanOrEqual(SHORT_S);
  }
});
