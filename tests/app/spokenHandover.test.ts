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
    expect(secondsOf(flite, told.sentences("handover"))).toBeLessThanOrEqual(WHOLE_S);
    expect(secondsOf(flite, told.sentences("handover short"))).toBeLessThanOrEqual(SHORT_S);
  });

  it("begins with the lowest pressures, whatever else there is", () => {
    const told = new HandoverCase(lines);
    const { map, sbp } = told.state.log.vitals;
    const first = /^Lowest (?:MAP|systolic) /u;
    for (const words of ["handover", "handover short", "handover all"])
      expect(told.parts(words)[0]).toMatch((map ?? sbp) ? first : /^(?:Lowest|No pressure recorded\.)/u);
  });

  it.each(["handover", "handover short"])("after %s, go on says in full what was not said in full", (words) => {
    const told = new HandoverCase(lines);
    told.parts("handover all");
    const keys = told.handover.map(({ key }) => key);
    expect(keys.length).toBeGreaterThan(3);
    told.parts(words);
    const inFull = told.handover.filter(({ level }) => level === 0).map(({ key }) => key);
    if (told.handover.at(-1)?.text.endsWith("say go on.")) {
      told.soundsToItsEnd();
      told.parts("go on");
      expect(told.handover.every(({ level }) => level === 0)).toBe(true);
      expect(told.handover.filter(({ key }) => inFull.includes(key))).toEqual([]);
      inFull.push(...told.handover.map(({ key }) => key));
    }
    expect(keys.filter((key) => !inFull.includes(key))).toEqual([]);
  });
});

it("stays within its time in every structure", () => {
  const context = testContext();
  const { structure } = context.protocol.handover;
  for (const value of HANDOVER_STRUCTURES) {
    const protocol = { ...context.protocol, handover: { structure: { ...structure, value } } };
    const told = new HandoverCase(STUFFED, { ...context, protocol });
    expect(secondsOf(flite, told.sentences("handover"))).toBeLessThanOrEqual(WHOLE_S);
    expect(secondsOf(flite, told.sentences("handover short"))).toBeLessThanOrEqual(SHORT_S);
  }
});
