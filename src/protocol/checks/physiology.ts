import { VITALS } from "../../core/vitals.ts";
import { when, within, type Faults } from "../fault.ts";
import type { Protocol } from "../protocol.ts";

const GCS_MAX = VITALS.gcsEye.limits.max + VITALS.gcsVerbal.limits.max + VITALS.gcsMotor.limits.max;
const GCS_MIN = VITALS.gcsEye.limits.min + VITALS.gcsVerbal.limits.min + VITALS.gcsMotor.limits.min;

function checkShock({ shock }: Protocol): Faults {
  const { warnAt, strongAt, childUpper } = shock;
  return [
    ...when(
      strongAt.value < warnAt.value,
      ["shock", "strongAt", "value"],
      `${strongAt.value} is below ${warnAt.value}, where the warning begins`,
    ),
    ...childUpper.flatMap(({ fromAgeA, belowAgeA }, i): Faults => {
      const at = ["shock", "childUpper", i];
      const before = childUpper[i - 1]?.belowAgeA ?? 0;
      return [
        ...when(
          fromAgeA < before,
          [...at, "fromAgeA"],
          `${fromAgeA} is below ${before}, where the band before it ends`,
        ),
        ...when(
          belowAgeA <= fromAgeA,
          [...at, "belowAgeA"],
          `${belowAgeA} is not above ${fromAgeA}: the band holds no age`,
        ),
      ];
    }),
  ];
}

function checkTrend({ trend }: Protocol): Faults {
  const { cushing, gcsFall, pupilDifferenceMm } = trend;
  const widest = VITALS.pupilLeft.limits.max - VITALS.pupilLeft.limits.min;
  const mostPoints = gcsFall.fromUnder.value - 1 - GCS_MIN;
  return [
    ...within(VITALS.hr.limits, cushing.hrBelowPerMin.value, ["trend", "cushing", "hrBelowPerMin", "value"]),
    ...when(
      cushing.hrFallPct.value >= 100,
      ["trend", "cushing", "hrFallPct", "value"],
      `${cushing.hrFallPct.value} % is no fall that a heart survives: must be below 100`,
    ),
    ...within({ min: GCS_MIN + 1, max: GCS_MAX + 1 }, gcsFall.fromUnder.value, [
      "trend",
      "gcsFall",
      "fromUnder",
      "value",
    ]),
    ...when(
      gcsFall.points.value > mostPoints,
      ["trend", "gcsFall", "points", "value"],
      `no total under ${gcsFall.fromUnder.value} can fall by ${gcsFall.points.value}`,
    ),
    ...when(
      pupilDifferenceMm.value >= widest,
      ["trend", "pupilDifferenceMm", "value"],
      `no two pupils are further apart than ${widest} mm: must be below that`,
    ),
  ];
}

function checkOxygen({ oxygen }: Protocol): Faults {
  const { stopSpo2Pct, dangerSpo2Pct } = oxygen;
  return [
    ...within(VITALS.spo2.limits, stopSpo2Pct.value, ["oxygen", "stopSpo2Pct", "value"]),
    ...within(VITALS.spo2.limits, dangerSpo2Pct.value, ["oxygen", "dangerSpo2Pct", "value"]),
    ...when(
      dangerSpo2Pct.value > stopSpo2Pct.value,
      ["oxygen", "dangerSpo2Pct", "value"],
      `${dangerSpo2Pct.value} is above ${stopSpo2Pct.value}, where an attempt stops`,
    ),
  ];
}

/** Limits of shock, trend, low pressure and oxygen that can be reached, and are the right way round. */
export const checkPhysiology = (protocol: Protocol): Faults => [
  ...checkShock(protocol),
  ...checkTrend(protocol),
  ...within(VITALS.sbp.limits, protocol.lowPressure.publishedSbpFloorMmHg.value, [
    "lowPressure",
    "publishedSbpFloorMmHg",
    "value",
  ]),
  ...checkOxygen(protocol),
];
