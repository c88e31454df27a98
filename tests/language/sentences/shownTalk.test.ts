import { describe, expect, it } from "vitest";
import { showTalking, type Talking } from "../../../src/language/sentences/shownTalk.ts";

const USUAL: Talking = { level: "full", pausedForMs: 0, standsByForMs: 0, pace: 0, volume: 0 };

describe("how it talks, on the screen", () => {
  it.each<readonly [Partial<Talking>, string]>([
    [{}, ""],
    [{ level: "brief" }, "Brief talk."],
    [{ level: "alerts" }, "Alerts only, readings are not said back."],
    [{ pausedForMs: 80_000 }, "Alerts paused, 1 min 20 s left."],
    [{ standsByForMs: 40_999 }, "Standing by, 40 s left."],
    [{ volume: 1 }, "Voice louder."],
    [{ volume: 2, pace: -1 }, "Voice loudest, slower."],
    [{ volume: -2, pace: 2 }, "Voice quietest, fastest."],
    [
      { level: "brief", pausedForMs: 600_000, standsByForMs: 1000, volume: -1 },
      "Brief talk. Alerts paused, 10 min left. Standing by, 1 s left. Voice quieter.",
    ],
  ])("%j", (change, shown) => expect(showTalking({ ...USUAL, ...change })).toBe(shown));
});
