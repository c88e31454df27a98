import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { selectTargets } from "../../../src/log/targets.ts";
import { isWorse, type Priority } from "../../../src/protocol/priority.ts";
import { ruleFor, type JudgedRule } from "../../../src/rules/alerts/judgedRule.ts";
import { defaultProtocol as protocol } from "../../../src/protocol/defaultProtocol.ts";
import { Ward } from "./ward.ts";

type Code = "sbp" | "spo2" | "map";

/** The alert as it holds for a ward's patient: by default one of whom nothing is known. */
const rule = (code: Code, ward = new Ward()): JudgedRule => {
  const found = protocol.alerts.find((alert) => alert.code === code && alert.side === "under");
  const judged = found && ruleFor(found, selectTargets(ward.state, protocol));
  if (judged === undefined) throw new Error(`no alert for ${code}`);
  return judged;
};

/** The same hysteresis told forwards, one latch a band: the rules walk backwards over the readings that are left. */
function latches({ bands, clearBy, clearReadings }: JudgedRule) {
  const state = bands.map((band) => ({ band, on: false, well: 0 }));
  return (value: number): Priority | "none" => {
    for (const latch of state) {
      const inside = value < latch.band.limit || (latch.band.inclusive && value === latch.band.limit);
      latch.well = value >= latch.band.limit + clearBy ? latch.well + 1 : 0;
      if (inside) latch.on = true;
      else if (latch.well >= clearReadings) latch.on = false;
    }
    return state.findLast((latch) => latch.on)?.band.priority ?? "none";
  };
}

const systolics = fc.array(fc.integer({ min: 92, max: 122 }), { maxLength: 40 });

describe("any run of values", () => {
  it.each([
    ["sbp", fc.integer({ min: 92, max: 122 })],
    ["spo2", fc.integer({ min: 86, max: 100 })],
  ] as const)("%s stands as a forward latch says", (code, value) => {
    fc.assert(
      fc.property(fc.array(value, { maxLength: 40 }), (values) => {
        const ward = new Ward();
        const expected = latches(rule(code));
        for (const v of values) {
          ward.say({ [code]: v });
          ward.round();
          expect(ward.standing()[rule(code).id] ?? "none").toBe(expected(v));
        }
      }),
    );
  });

  it("never clears on, nor flaps between, values inside the hysteresis", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 105, max: 114 }), { minLength: 1, maxLength: 40 }), (values) => {
        const ward = new Ward();
        for (const sbp of values) {
          ward.say({ sbp });
          ward.round();
        }
        const changes = ward.facts.filter((f) => f.type === "alert.raised" || f.type === "alert.cleared");
        expect(changes.length).toBe(values.some((sbp) => sbp < 110) ? 1 : 0);
      }),
    );
  });

  it("announces every raise once and at once, and nothing that does not stand", () => {
    fc.assert(
      fc.property(systolics, (values) => {
        const ward = new Ward();
        values.forEach((sbp, i) => {
          const before = ward.standing()["sbpLow"];
          ward.at(i).say({ sbp });
          const said = ward.heardNow();
          const after = ward.standing()["sbpLow"];
          const isNew = after !== undefined && before === undefined;
          const isWorse = before === "medium" && after === "high";
          // Forty seconds in all: no repetition falls due, whatever the priority.
          expect(said).toEqual(isNew ? [`sbpLow raised ${after}`] : isWorse ? ["sbpLow worse high"] : []);
          expect(ward.heardNow()).toEqual([]);
        });
      }),
    );
  });

  it("is quiet for ever after it was cleared", () => {
    fc.assert(
      fc.property(systolics, fc.integer({ min: 1, max: 100_000 }), (values, laterS) => {
        const ward = new Ward();
        values.forEach((sbp) => {
          ward.say({ sbp });
          ward.round();
        });
        ward.say({ sbp: 116 });
        ward.round();
        ward.say({ sbp: 117 });
        ward.round();
        expect(ward.standing()).toEqual({});
        expect(ward.at(laterS).heardNow()).toEqual([]);
      }),
    );
  });

  it("stands after strikes only if a reading that is left holds it", () => {
    fc.assert(
      fc.property(systolics, fc.array(fc.nat(), { maxLength: 10 }), (values, picks) => {
        const ward = new Ward();
        const ids = values.map((sbp) => {
          const [id] = ward.say({ sbp });
          ward.round();
          return id ?? "";
        });
        const struck = new Set(picks.map((pick) => ids[pick % Math.max(1, ids.length)] ?? ""));
        ward.strike(...struck);
        ward.round();
        const left = values.filter((_, i) => !struck.has(ids[i] ?? ""));
        if (left.every((sbp) => sbp >= 110)) expect(ward.standing()).toEqual({});
        const newest = left.at(-1);
        if (newest !== undefined && newest < 110) expect(ward.standing()["sbpLow"]).toBeDefined();
      }),
    );
  });
});

const traits = fc.oneof(
  fc.record({ ageA: fc.constantFrom(0.5, 3, 6, 12, 30, 60, 80) }),
  fc.record({ cause: fc.constantFrom("injury" as const, "bleed" as const, "unknown" as const) }),
  fc.record({ herniation: fc.boolean() }),
);
type Traits = Parameters<Ward["patient"]>[0];
/** Limits of all populations lie in here. */
const anySystolic = fc.integer({ min: 65, max: 140 });

describe("whoever the patient is", () => {
  it("described first, alerts stand as a forward latch over the limits of that patient says", () => {
    fc.assert(
      fc.property(fc.array(traits, { maxLength: 3 }), fc.array(anySystolic, { maxLength: 40 }), (said, values) => {
        const ward = new Ward();
        for (const trait of said) ward.patient(trait);
        const expected = latches(rule("sbp", ward));
        for (const sbp of values) {
          ward.say({ sbp });
          ward.round();
          expect(ward.standing()["sbpLow"] ?? "none").toBe(expected(sbp));
        }
      }),
    );
  });

  const event = fc.oneof({ weight: 3, arbitrary: anySystolic }, { weight: 1, arbitrary: traits });
  const isMilderOrSame = (a: Priority | "none", b: Priority | "none"): boolean =>
    a === "none" || (b !== "none" && !isWorse(a, b));

  it("described at any time, alerts stand for no more than the readings say by the limits that hold, and for no less than the newest", () => {
    fc.assert(
      fc.property(fc.array<number | Traits>(event, { maxLength: 40 }), (events) => {
        const ward = new Ward();
        const values: number[] = [];
        for (const happened of events) {
          if (typeof happened === "number") {
            values.push(happened);
            ward.say({ sbp: happened });
          } else ward.patient(happened);
          const before = ward.standing()["sbpLow"];
          ward.round();
          const holds = rule("sbp", ward);
          const stands = (ward.standing()["sbpLow"] ?? "none") as Priority | "none";
          const most = values.map(latches(holds)).at(-1) ?? "none";
          const least = values.slice(-1).map(latches(holds))[0] ?? "none";
          expect(isMilderOrSame(stands, most)).toBe(true);
          expect(isMilderOrSame(least, stands)).toBe(true);
          // A description alone raises nothing that the newest reading does not.
          if (typeof happened !== "number" && before === undefined) expect(stands).toBe(least);
        }
      }),
      { numRuns: 300 },
    );
  });

  it("an alert changes at most once for each thing that is said: judging again changes nothing and says nothing", () => {
    fc.assert(
      fc.property(fc.array<number | Traits>(event, { maxLength: 30 }), (events) => {
        const ward = new Ward();
        for (const happened of events) {
          if (typeof happened === "number") ward.say({ sbp: happened });
          else ward.patient(happened);
          ward.round();
          const { length } = ward.facts;
          expect(ward.round()).toEqual([]);
          expect(ward.facts.length).toBe(length);
        }
      }),
    );
  });

  it("limits that change while every value stays well above both raise and clear nothing", () => {
    fc.assert(
      fc.property(fc.array(traits, { minLength: 1, maxLength: 20 }), (said) => {
        const ward = new Ward();
        ward.say({ sbp: 140, map: 100, icp: 10, spo2: 99 });
        for (const trait of said) {
          ward.patient(trait);
          expect(ward.round()).toEqual([]);
        }
        expect(ward.facts.some((f) => f.type === "alert.raised" || f.type === "alert.cleared")).toBe(false);
      }),
    );
  });
});
