import { describe, expect, it } from "vitest";
import { countsOf, slowestOf, verdictOf } from "../../.ci/counts.mjs";

const report = (numPassedTests: number, numFailedTests: number, testResults: object[] = []) => ({
  numPassedTests,
  numFailedTests,
  numPendingTests: 1,
  numTodoTests: 1,
  testResults,
});

describe("counting what a runner did", () => {
  it("adds up passed, failed and skipped tests", () => {
    expect(countsOf(report(5, 2))).toEqual({ passed: 5, failed: 2, skipped: 2 });
  });

  it("counts a test file that could not be loaded as a failure", () => {
    const files = [
      { status: "failed", assertionResults: [] },
      { status: "failed", assertionResults: [{ status: "failed" }] },
      { status: "passed", assertionResults: [{ status: "passed" }] },
    ];
    expect(countsOf(report(1, 1, files)).failed).toBe(2);
  });

  it("counts a runner without a report as a failure", () => {
    expect(countsOf(undefined)).toEqual({ passed: 0, failed: 1, skipped: 0 });
  });

  it.each([
    [{ passed: 3, failed: 0, skipped: 0 }, "unit: 3 passed, 0 failed"],
    [{ passed: 3, failed: 1, skipped: 2 }, "unit: 3 passed, 1 failed, 2 skipped"],
    [{ passed: 0, failed: 0, skipped: 0 }, undefined],
  ])("writes the closing line of %j", (counts, line) => {
    expect(verdictOf("unit", counts)).toBe(line);
  });

  it("names the files that took longest", () => {
    const files = [12, 340, 90].map((s, i) => ({
      name: `/x/${i}.test.ts`,
      startTime: 5_000,
      endTime: 5_000 + s * 1000,
    }));
    expect(slowestOf(report(3, 0, files), 2)).toEqual(["1.test.ts 340 s", "2.test.ts 90 s"]);
    expect(slowestOf(undefined)).toEqual([]);
  });
});
