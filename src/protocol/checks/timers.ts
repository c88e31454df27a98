import { when, type Faults } from "../fault.ts";
import type { Protocol } from "../protocol.ts";

/** Lengths of time that must not be the wrong way round. */
export function checkTimers({ timers }: Protocol): Faults {
  const { reannounceS, promptAgainS, pressureEveryS, recheckEtco2S, recheckGasS, afterTube, watch } = timers;
  const shortest = watch.shortestS.value;
  const longest = watch.longestS.value;
  const inOrder = (short: number, long: number, at: readonly string[], than: string): Faults =>
    when(long < short, [...at, "value"], `${long} s is shorter than ${short} s, ${than}`);
  return [
    ...Object.entries({ reannounceS, promptAgainS }).flatMap(([key, { high, medium, low }]) => [
      ...inOrder(high.value, medium.value, ["timers", key, "medium"], "the wait at high priority"),
      ...inOrder(medium.value, low.value, ["timers", key, "low"], "the wait at medium priority"),
    ]),
    ...inOrder(
      pressureEveryS.induction.value,
      pressureEveryS.usual.value,
      ["timers", "pressureEveryS", "usual"],
      "the interval around induction",
    ),
    ...inOrder(recheckEtco2S.value, recheckGasS.value, ["timers", "recheckGasS"], "the wait before EtCO2"),
    ...inOrder(afterTube.pressureEveryS.value, afterTube.forS.value, ["timers", "afterTube", "forS"], "one interval"),
    ...when(
      longest <= shortest,
      ["timers", "watch", "longestS", "value"],
      `${longest} s is not longer than ${shortest} s, the shortest interval`,
    ),
  ];
}
