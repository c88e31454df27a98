import { basename } from "node:path";

/**
 * Counts a vitest JSON report. A test file that could not be loaded has no tests of its own, yet it is a failure.
 *
 * @param report parsed report, or `undefined` when the runner died before it wrote one: one failure.
 */
export function countsOf(report) {
  if (report === undefined) return { passed: 0, failed: 1, skipped: 0 };
  const unloadable = report.testResults.filter(
    (file) => file.status === "failed" && file.assertionResults.length === 0,
  );
  return {
    passed: report.numPassedTests,
    failed: report.numFailedTests + unloadable.length,
    skipped: report.numPendingTests + report.numTodoTests,
  };
}

/** The closing line of one runner, or `undefined` when it was not asked to run anything. */
export function verdictOf(name, { passed, failed, skipped }) {
  if (passed + failed + skipped === 0) return undefined;
  return `${name}: ${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ""}`;
}

/** Files that took longest, with their seconds: where to look when the whole takes too long. */
export function slowestOf(report, most = 5) {
  const seconds = (file) => Math.round((file.endTime - file.startTime) / 1000);
  const slowest = [...(report?.testResults ?? [])].sort((a, b) => seconds(b) - seconds(a)).slice(0, most);
  return slowest.map((file) => `${basename(file.name)} ${seconds(file)} s`);
}
