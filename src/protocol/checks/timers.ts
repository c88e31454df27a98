import { when, type Faults } from "../fault.ts";
import type { Protocol } from "../protocol.ts";

/** Lengths of time that must not be the wrong way round. */
export function checkTimers({ timers }: Protocol): Faults {
  const { reannounceS, pressureEveryS, recheckEtco2S, recheckGasS } = timers;
  const { high, medium, low } = reannounceS;
  const inOrder = (short: number, long: number, at: readonly string[], than: string): Faults =>
    when(long < short, [...at, "value"], `${long} s is shorter than ${short} s, ${than}`);
  return [
    ...inOrder(high.value, medium.value, ["timers", "reannounceS", "medium"], "the wait at high priority"),
    ...inOrder(medium.value, low.value, ["timers", "reannounceS", "low"], "the wait at medium priority"),
    ...inOrder(
      pressureEveryS.induction.value,
      pressureEveryS.usual.value,
      ["timers", "pressureEveryS", "usual"],
      "the interval around induction",
    ),
    ...inOrder(recheckEtco2S.value, recheckGasS.value, ["timers", "recheckGasS"], "the wait before EtCO2"),
  ];
}
