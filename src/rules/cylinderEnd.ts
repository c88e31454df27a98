import { cylinderEndurance, freeGasL } from "../core/cylinder.ts";
import { fraction, lPerMin } from "../core/quantities.ts";
import type { CaseState } from "../log/caseState.ts";
import type { Protocol } from "../protocol/protocol.ts";

export type CylinderEnd = {
  /** Free gas in it now, litres: it falls with time at the flow that was said. */
  readonly contentsL: number;
  readonly fullL: number;
  readonly flowLPerMin: number;
  readonly recordedAtMs: number;
  /** Minutes from now, 0 once it is there. */
  readonly toReserveMin: number;
  readonly toEmptyMin: number;
};

const MS_PER_MIN = 60_000;

/** What the cylinder still gives at `nowMs`, from the newest record; nothing where there is none. */
export function cylinderEnd(
  { care }: Pick<CaseState, "care">,
  { oxygen }: Protocol,
  nowMs: number,
): CylinderEnd | undefined {
  if (care.cylinder === undefined) return undefined;
  const { contentsL: thenL, fullL, flowLPerMin, atMs: recordedAtMs } = care.cylinder;
  const drawnL = (Math.max(0, nowMs - recordedAtMs) / MS_PER_MIN) * flowLPerMin;
  const [contents, full] = [freeGasL(Math.max(0, thenL - drawnL)), freeGasL(fullL)];
  const [flow, reserve] = [lPerMin(flowLPerMin), fraction(oxygen.cylinderReserveFraction.value)];
  if (!contents.ok || !full.ok || !flow.ok || !reserve.ok) return undefined;
  const use = { fullL: full.value, contentsL: contents.value, reserve: reserve.value, flowLPerMin: flow.value };
  const endurance = cylinderEndurance(use);
  if (!endurance.ok) return undefined;
  const { toReserve: toReserveMin, toEmpty: toEmptyMin } = endurance.value;
  return { contentsL: contents.value, fullL, flowLPerMin, recordedAtMs, toReserveMin, toEmptyMin };
}
