import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { collectionBundle, documentBundle } from "../../../src/export/fhir/bundle.ts";
import { playMoves, randomMoves, recordedFrom } from "../randomCase.ts";
import { complaints } from "./judges.ts";

const EXPORTED_MS = 1_900_000_000_000;

describe("any case that the app can be played into", () => {
  it("exports as two bundles that no judge has anything against, and the same ones again", () => {
    fc.assert(
      fc.property(randomMoves, fc.boolean(), (moves, rehearsal) => {
        const facts = playMoves(moves);
        const collection = collectionBundle(recordedFrom(facts, rehearsal), EXPORTED_MS);
        expect(complaints(collection)).toEqual([]);
        const document = documentBundle(recordedFrom(facts, rehearsal), EXPORTED_MS);
        expect(complaints(document)).toEqual([]);
        const again = collectionBundle(recordedFrom(structuredClone(facts), rehearsal), EXPORTED_MS);
        expect(JSON.stringify(again)).toBe(JSON.stringify(collection));
      }),
      { numRuns: 40 },
    );
  });
});
