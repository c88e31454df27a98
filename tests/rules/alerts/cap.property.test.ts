import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { defaultProtocol as protocol } from "../../../src/protocol/defaultProtocol.ts";
import { Ward } from "./ward.ts";

const { most, withinS } = protocol.timers.alertCap;

/** Times, s, of the announcements that were words. */
const spokenAtS = (ward: Ward): readonly number[] =>
  ward.facts.flatMap((f) => (f.type === "alert.announced" && f.unspoken !== true ? [f.atMs / 1000] : []));

/** The most that fall into any stretch of that length. */
const mostWithin = (timesS: readonly number[], lengthS: number): number =>
  Math.max(0, ...timesS.map((from) => timesS.filter((at) => at >= from && at < from + lengthS).length));

const reading = fc.oneof(
  fc.record({ map: fc.integer({ min: 40, max: 120 }) }),
  fc.record({ sbp: fc.integer({ min: 60, max: 180 }), dbp: fc.integer({ min: 30, max: 59 }) }),
  fc.record({ spo2: fc.integer({ min: 70, max: 100 }) }),
  fc.record({ hr: fc.integer({ min: 30, max: 180 }) }),
  fc.record({ icp: fc.integer({ min: 5, max: 50 }) }),
  fc.record({ temp: fc.integer({ min: 33, max: 41 }) }),
  fc.record({ glucose: fc.integer({ min: 2, max: 25 }) }),
);
const stream = fc.array(fc.record({ afterS: fc.integer({ min: 1, max: 90 }), values: reading }), { maxLength: 60 });

describe("however wild the numbers are", () => {
  it("no more alerts are spoken within the time of the cap than it allows, and each new one has at least a sound", () => {
    fc.assert(
      fc.property(stream, (readings) => {
        const ward = new Ward();
        let atS = 0;
        for (const { afterS, values } of readings) {
          for (let s = 1; s < afterS; s += 5) ward.at(atS + s).round();
          atS += afterS;
          ward.at(atS).say(values);
          const before = new Set(Object.keys(ward.state.alerts));
          const announced = new Set(ward.round().flatMap(({ covers }) => covers.map(({ alertId }) => alertId)));
          for (const id of Object.keys(ward.state.alerts)) if (!before.has(id)) expect(announced).toContain(id);
        }
        expect(mostWithin(spokenAtS(ward), withinS.value)).toBeLessThanOrEqual(most.value);
      }),
      { numRuns: 60 },
    );
  });
});

it("past it a new alert is a tone, other reminders wait, and a high reminder is a tone", () => {
  const ward = new Ward();
  // Each is worse than the one before by as much as the protocol asks for. The last place is kept for prompts.
  for (const [i, map] of [89, 79, 69, 59, 49].entries()) {
    ward.at(i).say({ map });
    expect(ward.heardNow()[0]).toMatch(/^mapLow (?:raised|worse) (?:medium|high)$/u);
  }
  expect(mostWithin(spokenAtS(ward), withinS.value)).toBe(most.value - 1);
  ward.at(10).say({ spo2: 85 });
  expect(ward.heardNow()).toEqual(["spo2Low raised high tone"]);
  ward.at(11).say({ hr: 125 });
  expect(ward.heardNow()).toEqual(["hrHigh raised low tone"]);
  expect(ward.at(40).heardNow()).toEqual(["mapLow again high tone louder", "spo2Low again high tone louder"]);
  for (const id of ["mapLow", "cppBoundLow", "spo2Low"]) ward.has(id);
  // Escalated after three minutes, it is news again; as a reminder it waits.
  expect(ward.at(191).heardNow()).toEqual(["hrHigh worse medium tone"]);
  expect(ward.at(191 + 180).heardNow()).toEqual([]);
  expect(ward.at(599).heardNow()).toEqual([]);
  expect(ward.at(605).heardNow()).toEqual(["hrHigh again medium"]);
});
