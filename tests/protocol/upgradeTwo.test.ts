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
    const { schema, status, caution, groups, alerts, ...rest } = fileTwo;
    expect([schema, status, typeof caution, groups.length]).toEqual([2, "approved", "string", 2]);
    expect(file).toMatchObject(rest);
    const now = alerts.map(({ bands, ...alert }) => ({
      ...alert,
      side: "under",
      bands: bands.map(({ under, ...band }) => ({ at: under, ...band })),
    }));
    expect(file.alerts.slice(0, alerts.length)).toMatchObject(now);
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

describe("what a dilution is for is guessed", () => {
  const DRUG = "drugs[1]";
  const dose = fileTwo.drugs[0]?.doses[0];
  const made = (volumeMl: number, doses: readonly unknown[]) => {
    const recipe = { takeMl: 4, addMl: volumeMl - 4, makes: { amount: 4000, unit: "mcg", volumeMl } };
    const recipes = [{ ...fileTwo.drugs[1]?.recipes[0], ...recipe }];
    const file = withValue<unknown>(withValue<unknown>(fileTwo, `${DRUG}.doses`, doses), `${DRUG}.recipes`, recipes);
    return upgraded(file).drugs[1]?.recipes.map((r) => r.for);
  };

  it.each([
    [100, [dose], "syringe"],
    [101, [dose], "infusion"],
    [100, [], "infusion"],
    [10, [], "infusion"],
  ])("%d mL of a drug with the doses %j", (volumeMl, doses, guess) => {
    expect(made(volumeMl, doses)).toEqual([guess]);
  });

  it("as the bundled example says it of its own", () => {
    const recipes = defaultProtocol.drugs.map((drug) => drug.recipes.map(({ for: _for, ...recipe }) => recipe));
    const doses = defaultProtocol.drugs.map((drug) => drug.doses.map(({ afterTube: _mark, ...one }) => one));
    const drugs = defaultProtocol.drugs.map((drug, i) => ({ ...drug, doses: doses[i], recipes: recipes[i] }));
    const { osmotics, fluids } = defaultProtocol;
    expect(upgraded({ ...fileTwo, drugs, osmotics, fluids }).drugs).toEqual(defaultProtocol.drugs);
  });

  it("and said to be", () => expect(upgraded(fileTwo).caution).toMatch(/which doses are .* was guessed\. Review/u));
});

describe("a dose for after the tube", () => {
  it.each([
    ["drugs[0].doses[0]", "sedation after intubation", true],
    ["drugs[0].doses[0]", "sedation before intubation", undefined],
    ["osmotics[0].doses[0]", "raised pressure after intubation", true],
  ])("at %s, by its purpose: %s", (path, purpose, mark) => {
    const { drugs, osmotics } = upgraded(withValue<unknown>(fileTwo, `${path}.purpose`, purpose));
    const dose = (path.startsWith("drugs") ? drugs[0] : osmotics[0])?.doses[0];
    expect([dose?.purpose, dose?.afterTube]).toEqual([purpose, mark]);
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
      ["drugs[0].doses[0].afterTube", true],
      ["drugs[1].recipes[0].for", "infusion"],
      ["osmotics[0].doses[0].afterTube", true],
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
      "drugs[0].doses[0].afterTube: is not a known entry",
      "drugs[1].recipes[0].for: is not a known entry",
      "osmotics[0].doses[0].afterTube: is not a known entry",
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
