import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { PhoneGraph } from "../../src/listener/phoneGraph.ts";
import { freePath, logSoftmax } from "../../src/listener/phoneScores.ts";
import { BLANK, OUTPUT_COUNT, PHONE_NUMBERS } from "../../src/listener/phones.ts";
import { createSearch, MAX_CANDIDATES } from "../../src/listener/search.ts";
import { floats, INSIDE, OUTSIDE, phoneGraphOf } from "./vectors.ts";

describe("createSearch", () => {
  const searches = new Map(["num", "full"].map((name) => [name, createSearch(phoneGraphOf(name))] as const));

  // Source: the listener's test vectors, decoded by its reference search.
  it.each(INSIDE)("$name '$text': the reference's words, scores within 0.05", (vector) => {
    const logProbs = logSoftmax(floats(`${vector.name}.logits.f32`), vector.outputs);
    const candidates = searches.get(vector.grammar)?.decode(logProbs, vector.outputs) ?? [];
    expect(candidates.slice(0, vector.best.length).map((c) => c.words)).toEqual(vector.best.map((b) => b.words));
    vector.best.forEach(({ score }, i) => expect(Math.abs((candidates[i]?.score ?? NaN) - score)).toBeLessThan(0.05));
    expect(candidates.length).toBeLessThanOrEqual(MAX_CANDIDATES);

    const free = freePath(logProbs, vector.outputs);
    expect(free.phones).toBe(vector.phones);
    expect(Math.abs(free.score - vector.free)).toBeLessThan(0.05);
  });

  it.each(OUTSIDE)("$name '$text' is far outside the language: nothing is left of it", (vector) => {
    const logProbs = logSoftmax(floats(`${vector.name}.logits.f32`), vector.outputs);
    expect(searches.get(vector.grammar)?.decode(logProbs, vector.outputs)).toEqual([]);
  });

  it("does not depend on what it decoded before", () => {
    const search = createSearch(phoneGraphOf("full"));
    const decode = (name: string, outputs: number) =>
      search.decode(logSoftmax(floats(`${name}.logits.f32`), outputs), outputs);
    const before = decode("v8", 54);
    decode("v9", 95);
    expect(decode("v8", 54)).toEqual(before);
  });

  it("has nothing to say about no sound, or too little", () => {
    const search = createSearch(phoneGraphOf("num"));
    expect(search.decode(new Float32Array(0), 0)).toEqual([]);
    expect(search.decode(logSoftmax(new Float32Array(OUTPUT_COUNT), 1), 1)).toEqual([]);
  });
});

/** Two words from the start to the end, "a" = AH and "b" = AH B, any number of times; small enough to try every path. */
const LOOP: PhoneGraph = {
  states: 2,
  start: 0,
  finals: Int32Array.of(1),
  firstArc: Int32Array.of(0, 2, 4),
  arcTo: Int32Array.of(1, 1, 1, 1),
  arcWord: Int32Array.of(0, 1, 0, 1),
  firstPhone: Int32Array.of(0, 1, 3, 4, 6),
  phones: Uint8Array.from(["AH", "AH", "B", "AH", "AH", "B"].map((name) => PHONE_NUMBERS.get(name) ?? 0)),
  words: ["a", "b"],
};

const AH = PHONE_NUMBERS.get("AH") ?? 0;
const B = PHONE_NUMBERS.get("B") ?? 0;
const S = PHONE_NUMBERS.get("S") ?? 0;
type Row = readonly [blank: number, ah: number, b: number];

/** So many rows of scores from `least` to `most`; every other phone is out of the question. */
const rowsOf = (outputs: number, least: number, most: number): fc.Arbitrary<readonly Row[]> => {
  const score = fc.double({ min: least, max: most, noNaN: true });
  return fc.array(fc.tuple(score, score, score), { minLength: outputs, maxLength: outputs });
};

function logProbsOf(rows: readonly Row[]): Float32Array {
  const logProbs = new Float32Array(rows.length * OUTPUT_COUNT).fill(-100);
  rows.forEach(([blank, ah, b], t) => {
    logProbs[t * OUTPUT_COUNT + BLANK] = blank;
    logProbs[t * OUTPUT_COUNT + AH] = ah;
    logProbs[t * OUTPUT_COUNT + B] = b;
  });
  return logProbs;
}

/** The best score of every word sequence of LOOP, by trying every alignment that CTC's definition allows. */
function everySequence(logProbs: Float32Array, outputs: number): ReadonlyMap<string, number> {
  const best = new Map<string, number>();
  for (let path = 0; path < 3 ** outputs; path++) {
    const labels = Array.from({ length: outputs }, (_, t) => [BLANK, AH, B][Math.floor(path / 3 ** t) % 3] ?? 0);
    const score = labels.reduce((sum, label, t) => sum + (logProbs[t * OUTPUT_COUNT + label] ?? 0), 0);
    const collapsed = labels.filter((label, t) => label !== BLANK && label !== labels[t - 1]);
    const text = collapsed.map((label) => (label === AH ? "A" : "B")).join("");
    if (!/^(A|AB)+$/.test(text)) continue;
    const words = text.replace(/AB/g, "b ").replace(/A/g, "a ").trim();
    best.set(words, Math.max(best.get(words) ?? -Infinity, score));
  }
  return best;
}

it("finds the best alignment of CTC's definition, by trying every one", () => {
  const search = createSearch(LOOP);
  fc.assert(
    fc.property(rowsOf(5, -6, 0), (rows) => {
      const logProbs = logProbsOf(rows);
      const expected = everySequence(logProbs, rows.length);
      const [best] = [...expected].sort(([, a], [, b]) => b - a);
      const [found] = search.decode(logProbs, rows.length);
      expect(found?.score).toBeCloseTo(best?.[1] ?? NaN, 3);
      expect(expected.get(found?.words ?? "")).toBeCloseTo(found?.score ?? NaN, 3);
    }),
    { numRuns: 300 },
  );
});

it("gives up what is 40 nats and 2 a phone under the free path, and nothing else", () => {
  const search = createSearch(LOOP);
  const outcomes = { kept: 0, lost: 0 };
  fc.assert(
    // In seven frames no two paths come to differ by the beam, so only the free path cuts.
    fc.property(rowsOf(7, -9, -5), (rows) => {
      const logProbs = logProbsOf(rows);
      for (let t = 0; t < rows.length; t++) logProbs[t * OUTPUT_COUNT + S] = 0; // heard clearly, and in no word
      const best = Math.max(...everySequence(logProbs, rows.length).values());
      const found = search.decode(logProbs, rows.length)[0]?.score;
      outcomes[found === undefined ? "lost" : "kept"]++;
      if (found === undefined) expect(best).toBeLessThan(-40 + 1e-3);
      else expect(found).toBeCloseTo(best, 3);
    }),
    { numRuns: 60 },
  );
  expect(Math.min(outcomes.kept, outcomes.lost)).toBeGreaterThan(10);
});
