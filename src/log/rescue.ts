import type { CaseState } from "./caseState.ts";

type Measures = { readonly key: string; readonly atMs: number };

/** The prompt by which the time of the measures is called over: once it was said, the CO2 band is the usual one again. */
export const MEASURES_OVER = "rescueOver" as const;

/** Whether the affirmed measures run. "No herniation" ends them as "end rescue" does. */
export function rescueRuns({ care: { rescue }, herniation }: CaseState): boolean {
  if (rescue?.runs !== true) return false;
  return herniation === undefined || herniation.present || herniation.seq < rescue.seq;
}

/** The time-limited measures that run: from the rescue that was affirmed last, or from the word that the brain herniates. */
export function selectMeasures(state: CaseState): Measures | undefined {
  const { care, herniation } = state;
  if (rescueRuns(state) && care.rescue !== undefined) return { key: String(care.rescue.seq), atMs: care.rescue.atMs };
  return herniation?.present === true ? { key: String(herniation.seq), atMs: herniation.atMs } : undefined;
}

/** Whether the CO2 band of herniation counts: as long as the measures run and their time was not called over. */
export function sparesCo2(state: CaseState): boolean {
  const measures = selectMeasures(state);
  return measures !== undefined && state.care.prompts[MEASURES_OVER]?.key !== measures.key;
}
