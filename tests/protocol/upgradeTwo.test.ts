import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { defaultProtocol } from "../../src/protocol/defaultProtocol.ts";
import type { Protocol } from "../../src/protocol/protocol.ts";
import { showProtocolError } from "../../src/protocol/protocolError.ts";
import { upgradeProtocol } from "../../src/protocol/upgrade.ts";
import { validateProtocol } from "../../src/protocol/validate.ts";
import fileTwo from "./fixtures/protocol-v2.json" with { type: "json" };
import { withValue } from "./fixtures/withValue.ts";

function upgraded(json: unknown): Protocol {
  const result = upgradeProtocol(json, defaultProtocol);
  if (!result.ok) throw new Error(result.error.map(showProtocolError).join("\n"));
  expect(result.value.from).toBe(2);
  const valid = validateProtocol(result.value.json);
  if (!valid.ok) throw new Error(valid.error.map(showProtocolError).join("\n"));
  return valid.value;
}

const refusals = (json: unknown): readonly string[] => {
  const result = upgradeProtocol(json, defaultProtocol);
  return result.ok ? [] : result.error.map(showProtocolError);
};

const namesIn = (file: Protocol, group = 0) => file.groups[group]?.steps.map(({ name }) => name);
const later = defaultProtocol.groups.filter(({ phase }) => phase === "rescue" || phase === "failedAirway");

describe("a file of schema 2", () => {
  const file = upgraded(fileTwo);

  it("is an example again, however approved it was, and says that it was completed", () => {
    const { name, version, owner, date } = fileTwo;
    expect(fileTwo.status).toBe("approved");
    expect(file).toMatchObject({ schema: 3, name, version, owner, date, status: "example" });
    expect(file.caution.startsWith(`${fileTwo.caution} Upgraded from schema 2: `)).toBe(true);
    expect(file.caution).toContain("completed from the bundled example");
  });

  it("keeps all that it said", () => {
    const { schema, status, caution, groups, ...rest } = fileTwo;
    expect([schema, status, typeof caution, groups.length]).toEqual([2, "approved", "string", 2]);
    expect(file).toMatchObject(rest);
    const kept = file.groups.slice(0, groups.length);
    expect(kept).toMatchObject(groups);
  });

  it("takes what it lacks from the example", () => {
    const { targets, oxygen, doses, timers } = defaultProtocol;
    expect(file.targets.herniation).toEqual(targets.herniation);
    expect(file.oxygen.cylinderWarnMin).toEqual(oxygen.cylinderWarnMin);
    expect(file.doses).toEqual(doses);
    expect(Object.keys(file.timers).sort()).toEqual(Object.keys(timers).sort());
    expect([file.timers.watch, file.timers.promptAgainS]).toEqual([timers.watch, timers.promptAgainS]);
    expect(file.groups.slice(fileTwo.groups.length)).toEqual(later);
  });

  it("closes by itself what it closed before, and nothing else", () => {
    const by = file.groups.slice(0, 2).flatMap(({ steps }) => steps.flatMap(({ satisfiedBy }) => satisfiedBy ?? []));
    expect(by).toEqual([{ kind: "map-at-target" }, { kind: "recorded", codes: ["sbp", "spo2"], when: "any" }]);
  });
});

describe("names of steps", () => {
  it("are those of the example for the same step, else the challenge, shortened to a name of its own", () => {
    expect(fileTwo.groups[0]?.steps.map(({ challenge }) => challenge)).toEqual([
      "Mean pressure at target?",
      "Pressure and saturation taken?",
      "Suction to hand and running?",
      "Who holds the neck?",
      "Who holds the clock?",
      "Light?",
    ]);
    expect(namesIn(upgraded(fileTwo))).toEqual([
      "Mean pressure at",
      "Pressure and saturation",
      "suction",
      "Who holds the",
      "step 1",
      "Light",
    ]);
  });

  it("keep clear of the names of rescue and failed airway, which are added", () => {
    const file = withValue<unknown>(fileTwo, "groups[0].steps[5].challenge", "Front of neck?");
    expect(namesIn(upgraded(file))?.[5]).toBe("step 2");
  });

  it("keep clear of a name that a later step has from the example", () => {
    const file = withValue<unknown>(fileTwo, "groups[0].steps[0].challenge", "Suction?");
    expect(namesIn(upgraded(file))?.slice(0, 3)).toEqual(["step 1", "Pressure and saturation", "suction"]);
  });

  it("never make a valid file invalid, whatever its challenges are", () => {
    const word = fc.constantFrom("who", "Who", "suction", "front", "of", "neck", "step", "1", "2,", "?", "…");
    const challenge = fc.array(word, { minLength: 1, maxLength: 8 }).map((words) => words.join(" "));
    fc.assert(
      fc.property(fc.array(challenge, { minLength: 6, maxLength: 6 }), (challenges) => {
        const file = challenges.reduce<unknown>(
          (at, text, i) => withValue(at, `groups[0].steps[${i}].challenge`, text),
          fileTwo,
        );
        expect(namesIn(upgraded(file))).toHaveLength(6);
      }),
      { numRuns: 50 },
    );
  });
});

describe("groups of the example", () => {
  it.each([
    ["group", "groups[1].id", "rescue", ["failedAirway"]],
    ["step", "groups[0].steps[5].id", "frontOfNeck", ["rescue"]],
  ])("are not added where the file has a %s of that id", (_what, path, id, added) => {
    const file = upgraded(withValue<unknown>(fileTwo, path, id));
    expect(file.groups.slice(fileTwo.groups.length).map((group) => group.id)).toEqual(added);
  });
});

describe("refuses, by the paths of the file and all at once", () => {
  it("what schema 2 did not know, and what is broken in it", () => {
    const broken = [
      ["targets.herniation", defaultProtocol.targets.herniation],
      ["groups[0].steps[0].name", "pressure"],
      ["groups[0].steps[1].satisfiedBy.when", "any"],
      ["groups[1].phase", "rescue"],
      ["oxygen.stopSpo2Pct.value", "93"],
      ["doses", {}],
      ["timers.watch", {}],
    ].reduce<unknown>((file, [path, value]) => withValue(file, path as string, value), fileTwo);
    expect(refusals(broken)).toEqual([
      "targets.herniation: is not a known entry",
      "groups[0].steps[0].name: is not a known entry",
      "groups[0].steps[1].satisfiedBy.when: is not a known entry",
      'groups[1].phase: must be one of "prepare", "afterTube", not the text "rescue"',
      'oxygen.stopSpo2Pct.value: must be a number, not the text "93"',
      "timers.watch: is not a known entry",
      "doses: is not a known entry",
    ]);
  });

  it("an entry that is missing", () => {
    expect(refusals(withValue<unknown>(fileTwo, "timers.standByS", undefined))).toEqual([
      "timers.standByS: is missing",
    ]);
  });
});
