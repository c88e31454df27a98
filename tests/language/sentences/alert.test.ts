import { describe, expect, it } from "vitest";
import { sayAlert, sayBesideReading, sayWithdrawn, showStandingAlert } from "../../../src/language/sentences/alert.ts";
import type { UsualUnits } from "../../../src/language/sentences/recordedValue.ts";
import type { AlertBody } from "../../../src/rules/alerts/condition.ts";
import type { StandingAlert } from "../../../src/rules/alerts/standing.ts";

const USUAL: UsualUnits = { co2: "mmHg", glucose: "mmol/L" };
const OTHER: UsualUnits = { co2: "kPa", glucose: "mg/dL" };

type Limit = Extract<AlertBody, { kind: "limit" }>;

const limit = (
  code: Limit["code"],
  side: Limit["side"],
  value: number,
  target: number,
  more: Partial<Limit> = {},
): Limit => ({
  kind: "limit",
  code,
  side,
  value,
  target,
  beyond: Math.max(0, side === "under" ? target - value : value - target),
  origin: "measured",
  ...more,
});
const falling: AlertBody = {
  kind: "falling",
  code: "map",
  value: 96,
  target: 90,
  inMs: 180_000,
  origin: "computed",
};

const alertOf = (body: AlertBody, ageMs = 0): StandingAlert => ({
  alertId: "any",
  cause: "pressure",
  priority: "medium",
  body,
  ageMs,
  acknowledged: false,
});

// The differences are the listener's own subtraction of the two numbers as they are given.
const ROWS: readonly [what: string, body: AlertBody, said: string, shown: string][] = [
  [
    "a mean that was worked out",
    limit("map", "under", 65.3, 90, { origin: "computed" }),
    "MAP sixty five, twenty five under ninety.",
    "MAP 65, 25 under target 90, now",
  ],
  [
    "a mean that was measured",
    limit("map", "under", 65, 90),
    "Measured MAP sixty five, twenty five under ninety.",
    "MAP 65, 25 under target 90, now",
  ],
  [
    "a shortfall that rounds away",
    limit("map", "under", 89.7, 90),
    "Measured MAP ninety, just under ninety.",
    "MAP 90, just under target 90, now",
  ],
  [
    "a ceiling: not over, which would sound like a pressure",
    limit("sbp", "over", 190, 150),
    "Systolic one ninety, forty above one fifty.",
    "SBP 190, 40 over target 150, now",
  ],
  [
    "temperature, with its tenth",
    limit("temp", "over", 38.6, 37),
    "Temperature thirty eight point six, one point six above thirty seven.",
    "Temp 38.6, 1.6 over target 37.0, now",
  ],
  [
    "glucose",
    limit("glucose", "under", 3.2, 5.6),
    "Glucose three point two, two point four under five point six.",
    "Glucose 3.2, 2.4 under target 5.6, now",
  ],
  [
    "CPP without a measured ICP: no number for it",
    limit("cppBound", "under", 45, 60, { icpAtTargetMmHg: 5 }),
    "CPP under sixty if ICP is over five.",
    "CPP under 60 if ICP is over 5, now",
  ],
  [
    "CPP that no ICP could mend",
    limit("cppBound", "under", 30, 60, { icpAtTargetMmHg: -10 }),
    "CPP under sixty at any ICP.",
    "CPP under 60 at any ICP, now",
  ],
  [
    "a fall",
    falling,
    "MAP ninety six, falling, under ninety in three minutes.",
    "MAP 96, falling, under 90 in 3 min, now",
  ],
  [
    "a sign",
    { kind: "neuroSign", signs: [{ sign: "leftPupil", how: "fixed" }] },
    "Left pupil fixed.",
    "Left pupil fixed.",
  ],
  [
    "the device",
    { kind: "device", device: "microphoneLost", text: "Microphone lost." },
    "Microphone lost.",
    "Microphone lost.",
  ],
];

describe("an alert in words", () => {
  it.each(ROWS)("%s", (_what, body, said, shown) => {
    expect(sayAlert(alertOf(body), USUAL)).toBe(said);
    expect(showStandingAlert(alertOf(body), USUAL)).toBe(shown);
  });

  it("says how old its number is once that matters, and shows it always", () => {
    const body = limit("spo2", "under", 88, 94);
    expect(sayAlert(alertOf(body, 240_000), USUAL)).toBe("Sats eighty eight, six under ninety four. Four minutes old.");
    expect(showStandingAlert(alertOf(body, 240_000), USUAL)).toBe("SpO2 88, 6 under target 94, 4 min ago");
  });

  it("back at target it waits to be sure", () => {
    expect(showStandingAlert(alertOf(limit("map", "under", 91, 90)), USUAL)).toBe(
      "MAP 91, back at target 90, not yet sure, now",
    );
  });

  // 38 mmHg are 5.07 kPa and 45 are 6.00 (133.322 Pa each, NIST SP 811); 3.2 mmol/L are 57.7 mg/dL, 5.6 are 100.9 (180.156 g/mol).
  it.each([
    ["etco2", "over", 52, 45, "End tidal six point nine kilopascals, zero point nine above six."],
    ["glucose", "under", 3.2, 5.6, "Glucose fifty eight milligrams per decilitre, forty three under one oh one."],
  ] as const)("in the units that are usual elsewhere: %s", (code, side, value, target, said) => {
    expect(sayAlert(alertOf(limit(code, side, value, target)), OTHER)).toBe(said);
  });
});

describe("beside the read-back of its number", () => {
  it.each([
    ["the number is not said twice", limit("etco2", "under", 30, 35), "End tidal, five under thirty five."],
    [
      "a perfusion pressure was not read back: it is said whole",
      limit("cpp", "under", 54, 60),
      "CPP fifty four, six under sixty.",
    ],
    [
      "nor was a mean that was worked out",
      limit("map", "under", 65, 90, { origin: "computed" }),
      "MAP sixty five, twenty five under ninety.",
    ],
  ])("%s", (_what, body, said) => expect(sayBesideReading(alertOf(body), USUAL)).toBe(said));
});

it("names what is withdrawn, each once, and nothing where there is none", () => {
  expect(sayWithdrawn([limit("map", "under", 65, 90), falling])).toBe("MAP alert withdrawn.");
  expect(sayWithdrawn([limit("map", "under", 65, 90), limit("spo2", "under", 88, 94)])).toBe(
    "MAP and sats alert withdrawn.",
  );
  expect(sayWithdrawn([])).toBeUndefined();
});
