import { beforeAll, describe, expect, it } from "vitest";
import { createFlite, type Flite } from "../../src/adapters/voice/synthesise.ts";
import { fliteWasm } from "../adapters/voice/flite.ts";
import { testContext } from "./playCase.ts";
import { takeUtterance } from "../../src/app/takeTurn.ts";
import { emptyCase } from "../../src/log/caseState.ts";
import { freshState, type AppState } from "../../src/app/context.ts";

const context = testContext();

/** Budget: what is said of the targets after an age, a cause or herniation is over in four seconds. */
const BUDGET_S = 4;
/** Known miss: a reading taken back, or two ranges that change at once; said faster, their numbers are no longer heard right. */
const KNOWN_S = 4.2;

describe("targets that changed, as the built-in voice says them", () => {
  let flite: Flite;
  beforeAll(async () => {
    flite = await createFlite({ wasmBytes: fliteWasm() });
  });

  /** Seconds of the reply to the last line, asked for as the app asks for it. */
  function secondsOf(lines: readonly string[]): number {
    let state: AppState = freshState(emptyCase);
    let answer;
    for (const words of lines) {
      const utterance = { by: "typed", candidates: [{ words, score: 0 }], endedAtMs: 0 } as const;
      const turn = takeUtterance(context, state, utterance, 0);
      ({ state, answer } = turn);
    }
    if (answer?.withinMs === undefined) throw new Error("no target changed");
    const said = flite.synthesise(answer.reply, { withinMs: answer.withinMs });
    if (!said.ok) throw new Error(said.error.detail);
    return said.value.pcm.length / said.value.sampleRate;
  }

  it.each([
    [["age six"]],
    [["six months old"]],
    [["age one three"]],
    [["age six two"]],
    [["cause bleed"]],
    [["herniation suspected", "no herniation"]],
  ])("%j is within the budget", (lines) => {
    expect(secondsOf(lines)).toBeLessThanOrEqual(BUDGET_S);
  });

  it.each([[["age six", "disregard"]], [["cause bleed", "herniation suspected", "no herniation"]]])(
    "%j is within what is known of it",
    (lines) => {
      expect(secondsOf(lines)).toBeLessThanOrEqual(KNOWN_S);
    },
  );
});
