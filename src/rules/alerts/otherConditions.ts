import type { CaseState } from "../../log/caseState.ts";
import { rescueRuns } from "../../log/rescue.ts";
import type { Protocol } from "../../protocol/protocol.ts";
import { seenSigns } from "../herniationWatch.ts";
import type { Condition, DeviceFault } from "./condition.ts";

export const NEURO_SIGN = "neuroSign";

/** Signs of herniation that nobody has called by its name, and that are not treated. More signs are worse. */
function neuroCondition(state: CaseState, protocol: Protocol, nowMs: number): readonly Condition[] {
  const isKnown = rescueRuns(state) || state.herniation?.present === true;
  const signs = isKnown ? [] : seenSigns(state, protocol);
  if (signs.length === 0) return [];
  return [
    {
      alertId: NEURO_SIGN,
      cause: "brain",
      now: protocol.conditions.neuroSign.value,
      held: undefined,
      value: signs.length,
      isWorseThan: (kept) => signs.length > kept,
      body: { kind: "neuroSign", signs },
      atMs: nowMs,
    },
  ];
}

const deviceCondition = ({ conditions }: Protocol, { kind, sinceMs, text }: DeviceFault): Condition => ({
  alertId: kind,
  cause: "device",
  now: conditions[kind].value,
  held: undefined,
  value: 0,
  isWorseThan: () => false,
  body: { kind: "device", device: kind, text },
  atMs: sinceMs,
});

/** What is wrong although no single limit is crossed: signs of herniation, and the device itself. */
export const otherConditions = (
  state: CaseState,
  protocol: Protocol,
  devices: readonly DeviceFault[],
  nowMs: number,
): readonly Condition[] => [
  ...neuroCondition(state, protocol, nowMs),
  ...devices.map((fault) => deviceCondition(protocol, fault)),
];
