import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { CALL_LIMITS, callOf } from "../../src/app/callWord.ts";
import type { Utterance } from "../../src/app/ports.ts";
import { m2 } from "../../src/listener/margins.ts";
import { MAX_CANDIDATES } from "../../src/listener/search.ts";

type Scored = readonly (readonly [words: string, score: number])[];
const sound = (scored: Scored, free = { score: 0, phones: 12 }): Utterance => ({
  by: "listener",
  candidates: scored.map(([words, score]) => ({ words, score })),
  free,
  endedAtMs: 0,
});
const text = (words: string): Utterance => ({ by: "browser", candidates: [{ words, score: 0 }], endedAtMs: 0 });
const wordsOf = (utterance: Utterance): readonly string[] => utterance.candidates.map((c) => c.words);

const CLEAR = CALL_LIMITS.margin + 1;

describe("the call word in sound", () => {
  it.each<readonly [name: string, scored: Scored, kind: string]>([
    ["nothing in the language", [], "uncalled"],
    [
      "no call word",
      [
        ["map ninety", -1],
        ["tragus map ninety", -9],
      ],
      "uncalled",
    ],
    [
      "clearly first",
      [
        ["tragus map ninety", -1],
        ["map ninety", -1 - CLEAR],
      ],
      "called",
    ],
    ["first, with no rival", [["tragus map ninety", -1]], "called"],
    [
      "hardly better than without it",
      [
        ["tragus map ninety", -1],
        ["map ninety", -1 - CLEAR + 2],
      ],
      "uncalled",
    ],
    [
      "alone",
      [
        ["tragus", -1],
        ["map", -1 - CLEAR],
      ],
      "alone",
    ],
    ["alone, but it fits loosely", [["tragus", -12 * 0.9]], "uncalled"],
    ["last", [["icp fifteen at tragus", -1]], "uncalled"],
  ])("%s: %s", (_, scored, kind) => {
    expect(callOf(sound(scored)).kind).toBe(kind);
  });

  it("leaves the other readings without their call words, each once, best first", () => {
    const heard = sound([
      ["tragus map fifteen", -1],
      ["tragus map fifty", -2],
      ["map fifteen", -9],
      ["tragus", -10],
      ["map fifty", -11],
      ["status", -12],
    ]);
    const call = callOf(heard);
    if (call.kind !== "called") throw new Error(call.kind);
    expect(wordsOf(call.utterance)).toEqual(["map fifteen", "map fifty", "status"]);
    expect(call.utterance.candidates[1]?.score).toBe(-2);
  });

  it("of a full list never believes more than the list knows", () => {
    const full: Scored = Array.from({ length: MAX_CANDIDATES }, (_, i) => [
      i < 6 ? `tragus map ${i}` : `map ${i - 6}`,
      -i * 2,
    ]);
    const call = callOf(
      sound(
        full.map(([words, score], i) => [words.replace(/\d$/, "ninety") + (i % 6 === 0 ? "" : ` x${i % 6}`), score]),
      ),
    );
    if (call.kind === "alone") throw new Error("alone");
    const same = (): string => "one meaning";
    expect(m2(call.utterance.candidates, (words) => (words === "" ? undefined : same()))).toBeLessThanOrEqual(22);
    const gone = sound(
      full.map(([words, score]) => [words.startsWith("tragus") ? "tragus map ninety" : "map ninety", score]),
    );
    const cut = callOf(gone);
    if (cut.kind === "alone") throw new Error("alone");
    expect(m2(cut.utterance.candidates, (words) => (words === "" ? undefined : same()))).toBe(22);
  });

  it("gives no reading that was not there, and no score better than it was", () => {
    const scored = fc.array(
      fc.tuple(
        fc.constantFrom("tragus", "tragus map ninety", "map ninety", "status", "tragus status"),
        fc.double({ min: -50, max: 0, noNaN: true }),
      ),
      { maxLength: MAX_CANDIDATES },
    );
    fc.assert(
      fc.property(scored, (some) => {
        const sorted = [...some].sort((a, b) => b[1] - a[1]);
        const call = callOf(sound(sorted));
        if (call.kind === "alone") return;
        for (const { words, score } of call.utterance.candidates) {
          const from = sorted.filter(
            ([said]) => words === "" || said.replace(/^tragus ?/, "") === words || said === words,
          );
          expect(Math.max(...from.map(([, s]) => s))).toBeGreaterThanOrEqual(score);
        }
      }),
    );
  });
});

describe("the call word in text", () => {
  it.each([
    ["Tragus, map 90.", "called", ["map nine zero"]],
    ["tragus map ninety", "called", ["map ninety"]],
    ["Tragus.", "alone", undefined],
    ["map ninety", "uncalled", ["map ninety"]],
    ["icp fifteen at tragus", "uncalled", ["icp fifteen at tragus"]],
    ["tragus's map ninety", "uncalled", ["tragus's map ninety"]],
  ])("%s: %s", (words, kind, left) => {
    const call = callOf(text(words));
    expect(call.kind).toBe(kind);
    if (call.kind !== "alone") expect(wordsOf(call.utterance)).toEqual(left);
  });
});
