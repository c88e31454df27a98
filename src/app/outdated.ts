import type { CaseState } from "../log/caseState.ts";

/** What is worked out from what, by code: a new systolic pressure makes the mean and what perfuses the brain old too. */
const BUILT_ON: Readonly<Record<string, readonly string[]>> = {
  sbp: ["map", "cpp"],
  dbp: ["map", "cpp"],
  map: ["cpp"],
  icp: ["cpp"],
  gcsEye: ["gcs"],
  gcsVerbal: ["gcs"],
  gcsMotor: ["gcs"],
};

/** Codes of the numbers and findings that were recorded or struck out between two states, and of what is built on them. */
export function outdatedBetween(before: CaseState, after: CaseState): readonly string[] {
  const codesOf = (one: object, other: object): readonly string[] => [
    ...new Set([...Object.keys(one), ...Object.keys(other)]),
  ];
  const vitals = codesOf(before.vitals, after.vitals).filter((code) => {
    const key = code as keyof CaseState["vitals"];
    return before.vitals[key]?.entry.id !== after.vitals[key]?.entry.id;
  });
  const findings = codesOf(before.findings, after.findings).filter((code) => {
    const key = code as keyof CaseState["findings"];
    return before.findings[key]?.id !== after.findings[key]?.id;
  });
  const changed = [...vitals, ...findings];
  return [...new Set([...changed, ...changed.flatMap((code) => BUILT_ON[code] ?? [])])];
}
