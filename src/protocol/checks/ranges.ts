import { VITALS } from "../../core/vitals.ts";
import { lowToHigh, rangeWithin, when, within, type Faults } from "../fault.ts";
import type { Protocol } from "../protocol.ts";
import { checkFloor } from "./populations.ts";

/** Targets that are the same at every age, and the ICP that is assumed while none is measured. */
export function checkRanges(protocol: Protocol): Faults {
  const { spo2Pct, etco2MmHg, paco2MmHg, pao2MmHg, tempCel, glucoseMmolPerL, sodiumMmolPerL } = protocol.targets;
  const treatFrom = tempCel.treatFrom.value;
  const tempHigh = tempCel.hold.value.high;
  const treatBelow = glucoseMmolPerL.treatBelow.value;
  const glucoseLow = glucoseMmolPerL.hold.value.low;
  const treatFromAt = ["targets", "tempCel", "treatFrom", "value"];
  const treatBelowAt = ["targets", "glucoseMmolPerL", "treatBelow", "value"];
  return [
    ...checkFloor(spo2Pct, "spo2", [0], protocol, ["targets", "spo2Pct"]),
    ...rangeWithin(VITALS.etco2.limits, etco2MmHg.usual.value, ["targets", "etco2MmHg", "usual", "value"]),
    ...rangeWithin(VITALS.etco2.limits, etco2MmHg.herniation.value, ["targets", "etco2MmHg", "herniation", "value"]),
    ...lowToHigh(paco2MmHg.value, ["targets", "paco2MmHg", "value"]),
    ...lowToHigh(pao2MmHg.value, ["targets", "pao2MmHg", "value"]),
    ...rangeWithin(VITALS.temp.limits, tempCel.hold.value, ["targets", "tempCel", "hold", "value"]),
    ...within(VITALS.temp.limits, treatFrom, treatFromAt),
    ...when(treatFrom < tempHigh, treatFromAt, `${treatFrom} is inside the range to be held, up to ${tempHigh}`),
    ...rangeWithin(VITALS.glucose.limits, glucoseMmolPerL.hold.value, ["targets", "glucoseMmolPerL", "hold", "value"]),
    ...within(VITALS.glucose.limits, treatBelow, treatBelowAt),
    ...when(treatBelow > glucoseLow, treatBelowAt, `${treatBelow} is inside the range to be held, from ${glucoseLow}`),
    ...lowToHigh(sodiumMmolPerL.value, ["targets", "sodiumMmolPerL", "value"]),
    ...rangeWithin(VITALS.icp.limits, protocol.assumedIcpMmHg.value, ["assumedIcpMmHg", "value"]),
  ];
}
