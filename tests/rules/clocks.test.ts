import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { emptyCase } from "../../src/log/caseState.ts";
import type { NewFact } from "../../src/log/facts.ts";
import { reduceFacts } from "../../src/log/reduceFact.ts";
import { defaultProtocol as protocol } from "../../src/protocol/defaultProtocol.ts";
import { leftOf, runFor, type Clock } from "../../src/rules/clock.ts";
import { clocksRunning } from "../../src/rules/clocks.ts";
import { CaseBuilder } from "../log/caseBuilder.ts";

const SAID = { heard: "as said", by: "typed" } as const;

const ROCURONIUM: NewFact = {
  type: "drug.given",
  drugId: "rocuronium",
  drugClass: "muscleRelaxant",
  amount: { value: 100, unit: "mg" },
  ...SAID,
};
const KETAMINE: NewFact = { ...ROCURONIUM, drugId: "ketamine", drugClass: "induction" };
const PHENYLEPHRINE: NewFact = {
  ...ROCURONIUM,
  drugId: "phenylephrine",
  drugClass: "vasopressor",
  doseId: "pushDose",
  amount: { value: 100, unit: "mcg" },
};
const PROPOFOL_RUNS: NewFact = {
  type: "infusion.set",
  drugId: "propofol",
  drugClass: "induction",
  rate: { value: 20, unit: "mcg/kg/min" },
  ...SAID,
};
const airway = (event: "bladeIn" | "out" | "tubeIn" | "tubeConfirmed" | "tubeOut"): NewFact => ({
  type: "airway.event",
  event,
  ...SAID,
});
const phase = (name: "resuscitate" | "watch" | "settle"): NewFact => ({ type: "phase.entered", phase: name, ...SAID });
const clock = (
  name: "preoxygenation" | "apnoea" | "hyperventilation",
  type: "clock.started" | "clock.stopped",
): NewFact => ({
  type,
  clock: name,
  ...SAID,
});

/** "id from–to" of each clock, in seconds. */
const shown = (clocks: readonly Clock[]): readonly string[] =>
  clocks.map(
    ({ id, startedAtMs, endsAtMs }) => `${id} ${startedAtMs / 1000}–${endsAtMs === undefined ? "" : endsAtMs / 1000}`,
  );

function after(build: (b: CaseBuilder) => void, atS: number): readonly string[] {
  const b = new CaseBuilder();
  build(b);
  return shown(clocksRunning(b.state, protocol, atS * 1000));
}

type Row = readonly [name: string, build: (b: CaseBuilder) => void, atS: number, clocks: readonly string[]];

const ROWS: readonly Row[] = [
  ["nothing said", () => undefined, 10, []],
  [
    "oxygen on twice counts from the first",
    (b) => {
      b.at(10).add(clock("preoxygenation", "clock.started"));
      b.at(60).add(clock("preoxygenation", "clock.started"));
    },
    90,
    ["preoxygenation 10–190"],
  ],
  [
    "oxygen ends where the paralytic begins",
    (b) => {
      b.add(clock("preoxygenation", "clock.started"));
      b.at(200).add(ROCURONIUM);
    },
    210,
    ["apnoea 200–", "sedationDue 200–500", "pressureDue 200–260"],
  ],
  [
    "the first of two paralytics",
    (b) => {
      b.at(5).add(ROCURONIUM);
      b.at(50).add(ROCURONIUM, PROPOFOL_RUNS);
      b.say({ map: 95 });
    },
    60,
    ["apnoea 5–", "pressureDue 50–110"],
  ],
  [
    "apnoea ends with the first CO2 through the tube",
    (b) => {
      b.add(ROCURONIUM, PROPOFOL_RUNS);
      b.at(60).add(airway("tubeIn"));
      b.say({ etco2: 38, map: 95 });
    },
    70,
    ["pressureDue 60–120"],
  ],
  [
    "a CO2 value from before the tube proves nothing",
    (b) => {
      b.say({ etco2: 38, map: 95 });
      b.at(60).add(airway("tubeIn"));
    },
    70,
    ["tubeToCo2 60–90", "pressureDue 0–60"],
  ],
  [
    "a tube without CO2 that comes out leaves the apnoea running",
    (b) => {
      b.add(ROCURONIUM, PROPOFOL_RUNS);
      b.say({ map: 95 });
      b.at(60).add(airway("tubeIn"));
      b.at(80).add(airway("tubeOut"));
    },
    90,
    ["apnoea 0–", "pressureDue 0–60"],
  ],
  [
    "a proved tube that comes out begins another apnoea",
    (b) => {
      b.add(ROCURONIUM, PROPOFOL_RUNS);
      b.at(60).add(airway("tubeIn"));
      b.say({ etco2: 38, map: 95 });
      b.at(80).add(airway("tubeOut"));
    },
    90,
    ["apnoea 80–", "pressureDue 60–120"],
  ],
  [
    "an attempt runs from blade to out",
    (b) => {
      b.say({ map: 95 });
      b.at(5).add(airway("bladeIn"));
    },
    9,
    ["attempt 5–", "pressureDue 0–60"],
  ],
  [
    "a blade that is out has no clock",
    (b) => {
      b.say({ map: 95 });
      b.at(5).add(airway("bladeIn"));
      b.at(30).add(airway("out"));
    },
    40,
    ["pressureDue 0–60"],
  ],
  [
    "the pressure is due more often for ten minutes after the tube",
    (b) => {
      b.add(airway("tubeConfirmed"));
      b.at(10).say({ etco2: 38, map: 95 });
    },
    20,
    ["pressureDue 10–70"],
  ],
  [
    "and as usual after that",
    (b) => {
      b.add(airway("tubeConfirmed"));
      b.at(10).say({ etco2: 38, map: 95 });
    },
    700,
    ["pressureDue 10–310"],
  ],
  [
    "a push dose may be given again after its interval",
    (b) => {
      b.add(PHENYLEPHRINE);
      b.say({ map: 80 });
    },
    10,
    ["pushDose 0–60", "pressureDue 0–300"],
  ],
  [
    "sedation is due after the sedative given last",
    (b) => {
      b.say({ map: 95 });
      b.add(KETAMINE, ROCURONIUM, clock("apnoea", "clock.stopped"));
      b.at(100).add(KETAMINE);
    },
    110,
    ["sedationDue 100–400", "pressureDue 0–60"],
  ],
  [
    "no sedation is due once the paralytic has worn off",
    (b) => {
      b.say({ map: 95 });
      b.add(KETAMINE, ROCURONIUM, clock("apnoea", "clock.stopped"), phase("watch"));
    },
    4300,
    [],
  ],
  [
    "a whole set, by its oldest value",
    (b) => {
      b.add(phase("resuscitate"));
      b.say({ map: 95 });
      b.at(30).say({ hr: 90, spo2: 98 });
    },
    40,
    ["pressureDue 0–300", "fullSetDue 0–600"],
  ],
  [
    "in watch the first set is due after the shortest interval",
    (b) => {
      b.say({ map: 95, hr: 90, spo2: 98 });
      b.add(phase("watch"));
    },
    10,
    ["fullSetDue 0–60"],
  ],
  [
    "neuro by the newest part",
    (b) => {
      b.say({ gcsMotor: 5 });
      b.at(60).find({ code: "pupilLeft", finding: "brisk" });
    },
    70,
    ["neuroDue 60–960"],
  ],
  [
    "herniation measures are limited",
    (b) => {
      b.patient({ herniation: true });
    },
    10,
    ["rescue 0–1200"],
  ],
  [
    "hyperventilation is limited",
    (b) => {
      b.add(clock("hyperventilation", "clock.started"));
    },
    10,
    ["hyperventilation 0–1200"],
  ],
];

describe("clocks", () => {
  it.each(ROWS)("%s", (_name, build, atS, clocks) => {
    expect(after(build, atS)).toEqual(clocks);
  });

  it("stretches the watch interval while sets are good, and shortens it when one is not", () => {
    const b = new CaseBuilder();
    b.add(airway("tubeConfirmed"), phase("watch"));
    const everyS: number[] = [];
    const good = { map: 95, hr: 80, spo2: 98, etco2: 38 };
    for (const set of [good, good, good, { ...good, etco2: 60 }, good, ...Array.from({ length: 12 }, () => good)]) {
      b.at(b.nowMs / 1000 + 60).say(set);
      const due = clocksRunning(b.state, protocol, b.nowMs).find(({ id }) => id === "fullSetDue");
      everyS.push(((due?.endsAtMs ?? 0) - (due?.startedAtMs ?? 0)) / 1000);
    }
    expect(everyS.slice(0, 5)).toEqual([90, 135, 202.5, 60, 90]);
    expect(everyS.at(-1)).toBe(600);
  });

  const event = fc.oneof(
    fc.constantFrom(ROCURONIUM, KETAMINE, PHENYLEPHRINE, PROPOFOL_RUNS, phase("watch"), phase("settle")),
    fc.constantFrom(...(["bladeIn", "out", "tubeIn", "tubeConfirmed", "tubeOut"] as const)).map(airway),
    fc
      .tuple(
        fc.constantFrom("preoxygenation", "apnoea", "hyperventilation"),
        fc.constantFrom("clock.started", "clock.stopped"),
      )
      .map(([name, type]) => clock(name, type)),
  );
  const cases = fc.array(fc.tuple(fc.nat(120), fc.oneof(event, fc.constant("values" as const))), { maxLength: 20 });

  function played(steps: readonly (readonly [number, NewFact | "values"])[]): CaseBuilder {
    const b = new CaseBuilder();
    for (const [waitS, fact] of steps) {
      b.at(b.nowMs / 1000 + waitS);
      if (fact === "values") b.say({ map: 80, hr: 90, spo2: 95, etco2: 38 });
      else b.add(fact);
    }
    return b;
  }

  it("are the same after a reload", () => {
    fc.assert(
      fc.property(cases, fc.nat(5000), (steps, atS) => {
        const b = played(steps);
        const again = reduceFacts(b.facts, emptyCase);
        expect(clocksRunning(again, protocol, atS * 1000)).toEqual(clocksRunning(b.state, protocol, atS * 1000));
      }),
    );
  });

  it("are as they were before a fact once it is struck", () => {
    fc.assert(
      fc.property(cases, event, fc.nat(300), (steps, fact, laterS) => {
        const b = played(steps);
        const nowMs = b.nowMs + laterS * 1000;
        const before = clocksRunning(b.state, protocol, nowMs);
        b.strike(...b.add(fact));
        expect(clocksRunning(b.state, protocol, nowMs)).toEqual(before);
      }),
    );
  });

  it("never have a negative or an absurd length, however the device clock jumps", () => {
    fc.assert(
      fc.property(cases, fc.integer({ min: -10_000_000, max: 10_000_000 }), (steps, jumpMs) => {
        const b = played(steps);
        const nowMs = b.nowMs + jumpMs;
        for (const one of clocksRunning(b.state, protocol, nowMs)) {
          expect(runFor(one, nowMs)).toBeGreaterThanOrEqual(0);
          const left = leftOf(one, nowMs);
          if (left === undefined || one.endsAtMs === undefined) continue;
          expect(left).toBeGreaterThanOrEqual(0);
          expect(left).toBeLessThanOrEqual(one.endsAtMs - one.startedAtMs);
        }
        // Back again, they are what they would have been.
        expect(clocksRunning(b.state, protocol, b.nowMs)).toEqual(
          clocksRunning(reduceFacts(b.facts), protocol, b.nowMs),
        );
      }),
    );
  });
});
