import type { CaseState } from "../log/caseState.ts";

const PROMPT = /^prompt:/u;

/**
 * The case as it was before these alerts and prompts were announced: the rules then announce what still holds anew, with
 * the numbers and the age of then. For words that were queued and never said.
 */
export function unannounced(log: CaseState, alertIds: readonly string[]): CaseState {
  const alerts = Object.entries(log.alerts).map(([id, alert]) =>
    alertIds.includes(id) ? [id, { ...alert, announcedAtMs: undefined, announcedAtSeq: undefined }] : [id, alert],
  );
  const prompts = Object.entries(log.care.prompts).filter(
    ([id]) => !alertIds.some((name) => PROMPT.test(name) && name.replace(PROMPT, "") === id),
  );
  return {
    ...log,
    alerts: Object.fromEntries(alerts) as CaseState["alerts"],
    care: { ...log.care, prompts: Object.fromEntries(prompts) },
  };
}
