import type { CaseState } from "../../log/caseState.ts";
import type { VitalValue } from "../../log/facts.ts";
import { selectLatest, selectMap } from "../../log/selectors.ts";
import type { Protocol } from "../../protocol/protocol.ts";

type Reading = { readonly value: number; readonly atMs: number };

/** A mean that was worked out from the cuff is a last mean too. */
function lastOf(log: CaseState, protocol: Protocol, code: VitalValue["code"]): Reading | undefined {
  if (code !== "map") return selectLatest(log, code);
  const map = selectMap(log, protocol);
  return map && { value: map.mapMmHg, atMs: map.atMs };
}

/**
 * Whether a value lies further from the last one of its kind, a short while before, than the protocol lets pass.
 *
 * @param share of the protocol's limit that is already too far.
 */
export function isJump(
  log: CaseState,
  protocol: Protocol,
  { code, value }: VitalValue,
  nowMs: number,
  share = 1,
): boolean {
  const jump = protocol.confirm[code]?.jump;
  const last = lastOf(log, protocol, code);
  if (jump === undefined || last === undefined) return false;
  return nowMs - last.atMs <= jump.withinS * 1000 && Math.abs(value - last.value) > jump.by * share;
}
