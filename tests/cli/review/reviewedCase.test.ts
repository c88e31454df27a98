import { describe, expect, it } from "vitest";
import { reviewCase } from "../../../src/cli/review/reviewedCase.ts";
import { caseOf, JUDGE } from "./reviewStub.ts";

describe("what is kept of a case", () => {
  // Ten thousand records are reviewed in one go: what the reader hands over with each of them must not stay.
  it("holds nothing of its record but names and numbers", () => {
    const record = { ...caseOf("a"), entries: ["a long chain"] };
    const kept = reviewCase("a.json", record, JUDGE);
    expect(Object.keys(kept).toSorted()).toEqual(
      ["caseId", "facts", "file", "label", "marks", "measures", "openedAtMs", "ownProtocol", "rehearsal"].toSorted(),
    );
    expect(JSON.stringify(kept)).not.toContain("a long chain");
    expect(kept.facts).toBe(record.facts.length);
  });
});
