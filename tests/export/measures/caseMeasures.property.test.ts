import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { selectCaseSpan } from "../../../src/export/measures/caseSpan.ts";
import { measureCase } from "../../../src/export/measures/caseMeasures.ts";
import { selectFirstAttempt } from "../../../src/log/attemptRecord.ts";
import { reduceFacts } from "../../../src/log/reduceFact.ts";
import { defaultProtocol as protocol } from "../../../src/protocol/defaultProtocol.ts";
import { recordedCase } from "../../../src/export/recordedCase.ts";
import type { Fact } from "../../../src/log/facts.ts";
import { airway, BuiltCase } from "./builtCase.ts";
import { moves, play } from "./randomFacts.ts";

const MARK = { name: protocol.name, version: protocol.version };
const measuresOf = (facts: readonly Fact[]) =>
  measureCase(recordedCase({ caseId: "any", label: "any", rehearsal: false, facts, protocol, mark: MARK }));

const stamp = (id: string, atMs: number) => ({ v: 2 as const, id, atMs });

/** Something said and taken back at once: a value far below every floor, or a call at the airway. */
function struckPair(kind: number, atMs: number): readonly Fact[] {
  const said = { heard: "as said", by: "typed" as const };
  const low = { code: "sbp", value: 40, unit: "mm[Hg]", said: { value: 40, unit: "mmHg", words: "forty" } } as const;
  const facts: readonly Fact[] = [
    { type: "vital.recorded", ...stamp("low", atMs), readingId: "low", ...said, ...low },
    { ...airway("tubeOut"), ...stamp("low", atMs) },
    { ...airway("bladeIn"), ...stamp("low", atMs) },
    {
      type: "herniation.recorded",
      ...stamp("low", atMs),
      readingId: "low",
      present: true,
      ...said,
    },
  ];
  const strike: Fact = { ...stamp("strike", atMs), type: "entry.struck", targetIds: ["low"], reason: "disregarded" };
  return [facts[kind % facts.length]!, strike];
}

/** Asked back, and nobody answered. */
const unconfirmed = (atMs: number): readonly Fact[] => [
  {
    ...stamp("asked", atMs),
    type: "question.asked",
    question: {
      id: "q",
      reason: "implausible",
      about: ["sbp"],
      prompt: "Systolic forty?",
      heard: "systolic forty",
      by: "typed",
      askedAtMs: atMs,
      strikes: [],
      candidates: [],
    },
  },
  { ...stamp("closed", atMs), type: "question.closed", questionId: "q", outcome: "unconfirmed" },
];

/** Puts facts in at a place, at the time of the fact before it. Keys of prompts name facts by number: they are moved along. */
function inserted(facts: readonly Fact[], at: number, make: (atMs: number) => readonly Fact[]): readonly Fact[] {
  const place = at % (facts.length + 1);
  const more = make(facts[place - 1]?.atMs ?? 0);
  const moved = facts.slice(place).map((fact): Fact => {
    if (fact.type !== "prompt.announced" || fact.key === "undefined") return fact;
    return Number(fact.key) < place ? fact : { ...fact, key: String(Number(fact.key) + more.length) };
  });
  return [...facts.slice(0, place), ...more, ...moved];
}

describe("the measures, whatever happened", () => {
  it("are not changed by what was struck out", () => {
    fc.assert(
      fc.property(moves, fc.nat(), fc.nat(), (all, at, kind) => {
        const { facts } = play(all);
        expect(measuresOf(inserted(facts, at, (atMs) => struckPair(kind, atMs)))).toEqual(measuresOf(facts));
      }),
    );
  });

  it("are not changed by what nobody confirmed", () => {
    fc.assert(
      fc.property(moves, fc.nat(), (all, at) => {
        const { facts } = play(all);
        expect(measuresOf(inserted(facts, at, unconfirmed))).toEqual(measuresOf(facts));
      }),
    );
  });

  it("hold no number that is none, no time below nothing, and no more time than the case had", () => {
    fc.assert(
      fc.property(moves, (all) => {
        const recorded = play(all).recorded();
        const measures = measureCase(recorded);
        JSON.stringify(measures, (_key, value: unknown) => {
          if (typeof value === "number") expect(Number.isFinite(value)).toBe(true);
          return value;
        });
        const span = selectCaseSpan(recorded);
        const spanMin = span === undefined ? 0 : (span.toMs - span.fromMs) / 60_000;
        for (const { below } of measures.floors) {
          if (!("value" in below)) continue;
          const { belowMin, doseMmHgMin, unknownMin } = below.value;
          expect(Math.min(belowMin, doseMmHgMin, unknownMin)).toBeGreaterThanOrEqual(0);
          expect(belowMin + unknownMin).toBeLessThanOrEqual(spanMin + 1e-9);
        }
        const { overVentilation } = measures;
        if ("value" in overVentilation)
          expect(overVentilation.value.belowMin + overVentilation.value.unknownMin).toBeLessThanOrEqual(spanMin + 1e-9);
      }),
    );
  });

  it("agree with what is said aloud of the first attempt, wherever there was one", () => {
    const told = (m: { value: boolean } | { unknown: string }) => ("value" in m ? (m.value ? "yes" : "no") : "unknown");
    fc.assert(
      fc.property(moves, (all) => {
        const recorded = play(all).recorded();
        const { attempts, firstPass, firstPassWithoutLow } = measureCase(recorded);
        const aloud = selectFirstAttempt(reduceFacts(recorded.facts), protocol);
        expect(told(firstPass)).toBe(aloud.firstPass);
        if ("value" in attempts) expect(told(firstPassWithoutLow)).toBe(aloud.withoutLow);
      }),
    );
  });
});

describe("minutes and dose", () => {
  const series = fc.array(
    fc.record({ minutes: fc.integer({ min: 0, max: 14 }), sbp: fc.integer({ min: 40, max: 160 }) }),
    {
      minLength: 2,
      maxLength: 12,
    },
  );
  const under = (rows: readonly { readonly minutes: number; readonly sbp: number }[]) => {
    const b = new BuiltCase();
    let at = 0;
    for (const { minutes, sbp } of rows) b.min((at += minutes)).say({ sbp });
    const [target] = measureCase(b.recorded()).floors;
    return target !== undefined && "value" in target.below ? target.below.value : undefined;
  };

  it("never grow when a pressure was higher", () => {
    fc.assert(
      fc.property(series, fc.nat(), fc.integer({ min: 1, max: 100 }), (rows, which, by) => {
        const higher = rows.map((row, i) => (i === which % rows.length ? { ...row, sbp: row.sbp + by } : row));
        const [before, after] = [under(rows), under(higher)];
        expect(after === undefined).toBe(before === undefined);
        if (before === undefined || after === undefined) return;
        expect(after.belowMin).toBeLessThanOrEqual(before.belowMin + 1e-9);
        expect(after.doseMmHgMin).toBeLessThanOrEqual(before.doseMmHgMin + 1e-9);
        expect(after.unknownMin).toBe(before.unknownMin);
      }),
    );
  });

  // A reading under the line from its neighbours would say that the pressure was lower than the line had it.
  it("never grow by one more reading that is above the floor and above the line between its neighbours", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 40, max: 160 }),
        fc.integer({ min: 40, max: 160 }),
        fc.integer({ min: 2, max: 10 }),
        fc.integer({ min: 1, max: 9 }),
        fc.integer({ min: 110, max: 180 }),
        (from, to, minutes, at, sbp) => {
          fc.pre(at < minutes && sbp >= from + ((to - from) * at) / minutes);
          const ends = [
            { minutes: 0, sbp: from },
            { minutes, sbp: to },
          ];
          const more = [ends[0]!, { minutes: at, sbp }, { minutes: minutes - at, sbp: to }];
          expect(under(more)!.doseMmHgMin).toBeLessThanOrEqual(under(ends)!.doseMmHgMin + 1e-9);
          expect(under(more)!.belowMin).toBeLessThanOrEqual(under(ends)!.belowMin + 1e-9);
        },
      ),
    );
  });
});
