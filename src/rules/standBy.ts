import type { CaseState } from "../log/caseState.ts";

/** Whether prompts and questions are held. */
export const isStandingBy = (state: CaseState, nowMs: number): boolean =>
  state.standByUntilMs !== undefined && nowMs < state.standByUntilMs;
