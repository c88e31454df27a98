import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { selectTargets } from "../../src/log/targets.ts";
import { defaultProtocol as protocol } from "../../src/protocol/defaultProtocol.ts";
import { resolveTargets } from "../../src/protocol/resolveTargets.ts";
import { CaseBuilder } from "./caseBuilder.ts";

const targetsOf = (c: CaseBuilder) => selectTargets(c.state, protocol);
const unknown = { ageA: undefined, cause: "unknown", herniating: false } as const;

describe("the targets that hold now", () => {
  it("are those of nobody in particular at first", () => {
    expect(targetsOf(new CaseBuilder())).toEqual(resolveTargets(protocol, unknown));
    expect(targetsOf(new CaseBuilder()).ageKnown).toBe(false);
  });
  it("of an adult whose age is not known are systolic 110, MAP 90, CPP 60", () => {
    const { sbpMmHg, mapMmHg, cppMmHg } = targetsOf(new CaseBuilder());
    expect([sbpMmHg, mapMmHg, cppMmHg].map(({ target }) => target.value)).toEqual([110, 90, 60]);
  });
  it("follow the newest age that was not struck", () => {
    const c = new CaseBuilder();
    c.patient({ ageA: 60 });
    const [wrong] = c.patient({ ageA: 6 });
    expect(targetsOf(c)).toEqual(resolveTargets(protocol, { ...unknown, ageA: 6 }));
    c.strike(wrong ?? "");
    expect(targetsOf(c)).toEqual(resolveTargets(protocol, { ...unknown, ageA: 60 }));
  });
  it("follow the newest cause and herniation that were not struck", () => {
    const c = new CaseBuilder();
    const [cause] = c.patient({ cause: "bleed" });
    expect(targetsOf(c)).toEqual(resolveTargets(protocol, { ...unknown, cause: "bleed" }));
    const [herniation] = c.patient({ herniation: true });
    expect(targetsOf(c)).toEqual(resolveTargets(protocol, { ...unknown, cause: "bleed", herniating: true }));
    c.patient({ herniation: false });
    expect(targetsOf(c)).toEqual(resolveTargets(protocol, { ...unknown, cause: "bleed" }));
    c.strike(cause ?? "", herniation ?? "");
    expect(targetsOf(c)).toEqual(resolveTargets(protocol, unknown));
  });
  it("do not depend on any reading, nor on the order in which the patient was described", () => {
    const traits = fc.record({
      ageA: fc.integer({ min: 0, max: 110 }),
      cause: fc.constantFrom("injury" as const, "bleed" as const, "unknown" as const),
      herniation: fc.boolean(),
    });
    fc.assert(
      fc.property(
        traits,
        fc.boolean(),
        fc.integer({ min: 40, max: 200 }),
        ({ ageA, cause, herniation }, first, sbp) => {
          const c = new CaseBuilder();
          if (first) c.patient({ ageA });
          c.say({ sbp });
          c.patient({ herniation });
          c.patient({ cause });
          if (!first) c.patient({ ageA });
          expect(targetsOf(c)).toEqual(resolveTargets(protocol, { ageA, cause, herniating: herniation }));
        },
      ),
    );
  });
});
