import { describe, expect, it } from "vitest";
import json from "../../src/protocol/defaultProtocol.json" with { type: "json" };
import { defaultProtocol } from "../../src/protocol/defaultProtocol.ts";
import { validateProtocol } from "../../src/protocol/validate.ts";

/** The built-in file with the value at one path replaced; `undefined` takes the key out. */
function withValue(path: string, value: unknown): unknown {
  const copy: unknown = structuredClone(json);
  const keys = path.split(".");
  const last = keys.pop() ?? "";
  let at = copy as Record<string, unknown>;
  for (const key of keys) at = at[key] as Record<string, unknown>;
  if (value === undefined) delete at[last];
  else at[last] = value;
  return copy;
}

const errorsOf = (file: unknown): readonly string[] => {
  const result = validateProtocol(file);
  return result.ok ? [] : result.error.map((error) => error.path);
};

it("accepts the built-in file and hands it on unchanged", () => {
  expect(validateProtocol(json)).toEqual({ ok: true, value: json });
  expect(defaultProtocol).toEqual(json);
});

// Path of what is broken, its broken value, and the path that the error must name.
const BROKEN: readonly [string, unknown, string][] = [
  ["schema", 2, "schema"],
  ["owner", " ", "owner"],
  ["date", "25 November", "date"],
  ["caution", undefined, "caution"],
  ["colour", "red", "colour"],
  ["targets.mapMmHg.value", "90", "targets.mapMmHg.value"],
  ["targets.mapMmHg.value", Number.NaN, "targets.mapMmHg.value"],
  ["targets.mapMmHg.value", 900, "targets.mapMmHg.value"],
  ["targets.spo2Pct.value", 101, "targets.spo2Pct.value"],
  ["targets.sbpMmHg.source", "", "targets.sbpMmHg.source"],
  ["assumedIcpMmHg.value", { low: 30, high: 20 }, "assumedIcpMmHg.value"],
  ["assumedIcpMmHg.value.high", 130, "assumedIcpMmHg.value.high"],
  ["pressures.apartMmHg.value", 0, "pressures.apartMmHg.value"],
  ["pressures.halvesWithinS.source", "", "pressures.halvesWithinS.source"],
  ["alerts.0.code", "hr", "alerts.0.code"],
  ["alerts.0.bands", [], "alerts.0.bands"],
  ["alerts.0.bands.1.below", 60, "alerts.0.bands.1.below"],
  ["alerts.0.bands.1.below", Number.POSITIVE_INFINITY, "alerts.0.bands.1.below"],
  ["alerts.0.bands.1.priority", "medium", "alerts.0.bands.1.priority"],
  ["alerts.1.bands.0.below", 95, "alerts.1.bands.0.below"],
  ["alerts.3.bands.0.inclusive", true, "alerts.3.bands.0.below"],
  ["alerts.3.clearBy", 7, "alerts.3.clearBy"],
  ["alerts.2.clearReadings", 0, "alerts.2.clearReadings"],
  ["alerts.2.id", "mapLow", "alerts"],
  ["alerts.2.code", "map", "alerts"],
  ["groups.1.id", "patient", "groups"],
  ["groups.1.steps.0.id", "bleeding", "groups"],
  ["groups.0.steps.0.challenge", "one two three four five six seven eight nine", "groups.0.steps.0.challenge"],
  ["groups.0.steps.0.challenge", "", "groups.0.steps.0.challenge"],
  ["groups.0.steps.0.killer", "yes", "groups.0.steps.0.killer"],
  ["groups.0.steps.4.satisfiedBy.codes", ["pulse"], "groups.0.steps.4.satisfiedBy.codes.0"],
  ["groups.0.steps.4.satisfiedBy.codes", [], "groups.0.steps.4.satisfiedBy.codes"],
  ["confirm.sbp.actionEdges", [110, 100], "confirm.sbp.actionEdges.1"],
  ["confirm.sbp.actionEdges", [100, 100], "confirm.sbp.actionEdges.1"],
  ["confirm.sbp.actionEdges", [10], "confirm.sbp.actionEdges.0"],
  ["confirm.sbp.jump.by", 0, "confirm.sbp.jump.by"],
  ["confirm.sbp.soundAlike", "never", "confirm.sbp.soundAlike"],
  ["confirm.lactate", {}, "confirm.lactate"],
  ["timers.staleAfterS.value", -1, "timers.staleAfterS.value"],
  ["timers.reannounceS.high.value", 200, "timers.reannounceS"],
];

describe("refuses a broken file and says where", () => {
  it.each(BROKEN)("%s = %j", (path, value, at) => {
    expect(errorsOf(withValue(path, value))).toContain(at);
  });
});

it.each([[null], [[]], ["{}"], [7], [{}]])("refuses %j", (file) => expect(validateProtocol(file).ok).toBe(false));

it("reports every fault at once", () => {
  const file = withValue("targets.mapMmHg.value", 900) as { timers: { reannounceS: { high: { value: number } } } };
  file.timers.reannounceS.high.value = 200;
  expect(errorsOf(file)).toEqual(expect.arrayContaining(["targets.mapMmHg.value", "timers.reannounceS"]));
});
