import { VITALS, type VitalCode } from "../../core/vitals.ts";
import { when, within, type Faults } from "../fault.ts";
import type { Protocol } from "../protocol.ts";

/** Edges that can be crossed, lowest first. */
export function checkConfirm({ confirm }: Protocol): Faults {
  return (Object.keys(confirm) as VitalCode[]).flatMap((code) =>
    (confirm[code]?.actionEdges ?? []).flatMap((edge, i, edges): Faults => {
      const at = ["confirm", code, "actionEdges", i];
      const before = edges[i - 1];
      return [
        ...within(VITALS[code].limits, edge, at),
        ...when(before !== undefined && edge <= before, at, `${edge} is not above ${before ?? ""}, the edge before it`),
      ];
    }),
  );
}
