import { describe, expect, it } from "vitest";
import { VITALS, type VitalCode } from "../../src/core/vitals.ts";
import { defaultProtocol as protocol } from "../../src/protocol/defaultProtocol.ts";

/** As summaries of the named papers give them; who approves a protocol opens the papers. All else is common practice. */
const PUBLISHED: readonly [string, number, number][] = [
  ["systolic floor, ages 15 to 49 and over 70: Carney 2017", protocol.targets.sbpMmHg.value, 110],
  ["lower end of the perfusion range 60 to 70: Carney 2017", protocol.targets.cppMmHg.value, 60],
  ["systolic mark of hypotension before hospital: Lulla 2023", bandOf("sbp", 1), 100],
  ["saturation never at or below: Lulla 2023", bandOf("spo2", 1), 90],
  ["perfusion to be avoided below: 2007 guideline table, Anesthesiol Clin 2012;30:333", bandOf("cpp", 1), 50],
  ["longest interval between pressures, 10 min: Lulla 2023", protocol.timers.staleAfterS.value, 600],
];

function bandOf(code: string, band: number): number {
  return protocol.alerts.find((alert) => alert.code === code)?.bands[band]?.below ?? Number.NaN;
}

describe("published numbers", () => {
  it.each(PUBLISHED)("%s", (_source, ours, published) => expect(ours).toBe(published));
});

it("a mean at target holds the perfusion target at the high end of the assumed ICP", () => {
  const { targets, assumedIcpMmHg } = protocol;
  expect(targets.mapMmHg.value - assumedIcpMmHg.value.high).toBe(targets.cppMmHg.value);
});

it("every vital has a rule for being asked back: none is taken on trust", () => {
  expect(Object.keys(protocol.confirm).sort()).toEqual(Object.keys(VITALS).sort());
});

it("ICP and weight are asked back whatever a mishearing would change", () => {
  const always = (Object.keys(protocol.confirm) as VitalCode[]).filter(
    (code) => protocol.confirm[code]?.soundAlike === "always",
  );
  expect(always.sort()).toEqual(["icp", "weight"]);
});

it("five killer items may be waived only aloud", () => {
  const killers = protocol.groups.flatMap((group) => group.steps.filter((step) => step.killer).map((step) => step.id));
  expect(killers).toEqual(["neuroExam", "preoxygenation", "pushDose", "capnograph", "failurePlan"]);
});

it("no group is longer than eight items, and the list is no longer than thirty-four", () => {
  const lengths = protocol.groups.map((group) => group.steps.length);
  expect(Math.max(...lengths)).toBeLessThanOrEqual(8);
  expect(lengths.reduce((a, b) => a + b, 0)).toBeLessThanOrEqual(34);
});
