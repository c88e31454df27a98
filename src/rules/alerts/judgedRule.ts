import type { CurrentTargets } from "../../log/targets.ts";
import { limitsOf } from "../../protocol/alertLimits.ts";
import type { Priority } from "../../protocol/priority.ts";
import type { AlertRule } from "../../protocol/protocol.ts";

/** Values beyond `limit` have this priority. */
export type Band = { readonly limit: number; readonly inclusive: boolean; readonly priority: Priority };

/** An alert with the numbers that hold for the patient now, in the stored unit of what it watches; CPP in mmHg. */
export type JudgedRule = Pick<AlertRule, "id" | "code" | "side" | "clearBy" | "clearReadings" | "worseBy"> & {
  readonly target: number;
  /** Mildest first. */
  readonly bands: readonly Band[];
};

/** The alert with its bands put where this patient's limits are; none where the patient has no such limit now. */
export function ruleFor(rule: AlertRule, targets: CurrentTargets): JudgedRule | undefined {
  const { id, code, side, bands, clearBy, clearReadings, worseBy } = rule;
  const limits = limitsOf(targets, code, side);
  if (limits.target === undefined) return undefined;
  const judged = bands.flatMap(({ at, inclusive, priority }) => {
    const limit = typeof at === "number" ? at : limits[at];
    return limit === undefined ? [] : [{ limit, inclusive, priority }];
  });
  return { id, code, side, clearBy, clearReadings, worseBy, target: limits.target, bands: judged };
}
