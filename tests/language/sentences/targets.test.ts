import { describe, expect, it } from "vitest";
import { sayChangedTargets, showTargets } from "../../../src/language/sentences/targets.ts";
import { defaultProtocol } from "../../../src/protocol/defaultProtocol.ts";
import { resolveTargets, type Traits } from "../../../src/protocol/resolveTargets.ts";

const { targets, region } = defaultProtocol;
const of = (traits: Partial<Traits>, protocol = defaultProtocol) =>
  resolveTargets(protocol, { ageA: undefined, cause: "unknown", herniating: false, ...traits });

describe("targets that changed, aloud", () => {
  it.each<[name: string, before: Partial<Traits>, after: Partial<Traits>, said: string | undefined]>([
    ["none", {}, {}, undefined],
    ["an age in the same band", { ageA: 20 }, { ageA: 40 }, undefined],
    ["a birthday that moves one number", { ageA: 6 }, { ageA: 7 }, "target: systolic one oh four"],
    ["adult to child", {}, { ageA: 6 }, "targets: systolic one oh two, MAP sixty five, CPP forty five"],
    ["a range where there is a ceiling", {}, { cause: "bleed" }, "target: systolic one thirty to one fifty"],
    ["no ceiling for a child", { ageA: 6 }, { ageA: 6, cause: "bleed" }, undefined],
    ["a range that goes", { cause: "bleed" }, {}, "target: systolic one ten"],
    ["end tidal in herniation", {}, { herniating: true }, "target: end tidal thirty to thirty five"],
    [
      "a ceiling suspended",
      { cause: "bleed" },
      { cause: "bleed", herniating: true },
      "targets: systolic one thirty, no ceiling, end tidal thirty to thirty five",
    ],
  ])("%s", (_name, before, after, said) => {
    expect(sayChangedTargets(of(before), of(after), region)).toBe(said);
  });
});

describe("targets in force, printed", () => {
  it("says whose they are until an age is known, also where those of a child count then", () => {
    const child = targets.populations.find(({ kind }) => kind === "child")?.id ?? "";
    const unknownAge = { ...targets.unknownAge, value: child };
    const [whose] = showTargets(of({}, { ...defaultProtocol, targets: { ...targets, unknownAge } }), region);
    expect(whose).toBe("Child targets until an age is recorded, cause unknown");
    expect(showTargets(of({}), region)[0]).toBe("Adult targets until an age is recorded, cause unknown");
  });
  it("a suspended ceiling is never shown as one that counts", () => {
    const lines = showTargets(of({ cause: "bleed", herniating: true }), region);
    expect(lines.filter((line) => line.includes("ceiling"))).toEqual(["SBP ceiling 150 suspended: herniation"]);
  });
});
