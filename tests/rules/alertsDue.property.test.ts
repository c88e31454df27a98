import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { AlertRule } from "../../src/protocol/protocol.ts";
import { defaultProtocol as protocol } from "../../src/protocol/defaultProtocol.ts";
import { Ward } from "./ward.ts";

const rule = (code: "sbp" | "spo2"): AlertRule => {
  const found = protocol.alerts.find((alert) => alert.code === code);
  if (found === undefined) throw new Error(`no alert for ${code}`);
  return found;
};

/** The same hysteresis told forwards, one latch a band: the rules walk backwards over the readings that are left. */
function latches({ bands, clearBy, clearReadings }: AlertRule) {
  const state = bands.map((band) => ({ band, on: false, well: 0 }));
  return (value: number): string => {
    for (const latch of state) {
      const inside = value < latch.band.below || (latch.band.inclusive && value === latch.band.below);
      latch.well = value >= latch.band.below + clearBy ? latch.well + 1 : 0;
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
