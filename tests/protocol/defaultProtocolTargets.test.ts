import { describe, expect, it } from "vitest";
import { defaultProtocol as protocol } from "../../src/protocol/defaultProtocol.ts";
import { resolveTargets, type Targets } from "../../src/protocol/resolveTargets.ts";
import { checkRows } from "../tables/checkRows.ts";
import { LIMIT_ROWS, OVER_ROWS, UNDER_ROWS, type TargetCase } from "../tables/targets.ts";

const targetsOf = ({ ageA, cause = "unknown", herniating = false }: Omit<TargetCase, "limit">): Targets =>
  resolveTargets(protocol, { ageA, cause, herniating });

/** "sbpMmHg.ceiling": a number, or a limit with its value. */
function limitOf(given: TargetCase): number {
  const found = given.limit
    .split(".")
    .reduce<unknown>((at, key) => (at as Readonly<Record<string, unknown>> | undefined)?.[key], targetsOf(given));
  return typeof found === "number" ? found : ((found as { readonly value: number } | undefined)?.value ?? Number.NaN);
}

const valueOf = ({ value = Number.NaN }: TargetCase): number => value;

checkRows("limits", LIMIT_ROWS, limitOf);
checkRows("under a limit", UNDER_ROWS, (given) => Math.max(0, limitOf(given) - valueOf(given)));
checkRows("over a limit", OVER_ROWS, (given) => Math.max(0, valueOf(given) - limitOf(given)));

const AGES = Array.from({ length: 110 * 4 + 1 }, (_, quarter) => quarter / 4);

describe("ages 0 to 110, each quarter", () => {
  it("has one population for each", () => {
    const shared = AGES.map((ageA) =>
      protocol.targets.populations.filter((p) => p.fromAgeA <= ageA && ageA < p.belowAgeA),
    );
    expect(shared.filter((list) => list.length !== 1)).toEqual([]);
  });

  it("keeps every critical limit under its target, and the perfusion range in order", () => {
    const crossed = AGES.filter((ageA) => {
      const { sbpMmHg, mapMmHg, cppMmHg } = targetsOf({ ageA });
      const floors = [sbpMmHg, mapMmHg, cppMmHg].every(({ target, critical }) => critical.value < target.value);
      return !floors || cppMmHg.noGainAbove.value <= cppMmHg.target.value;
    });
    expect(crossed).toEqual([]);
  });

  it("sets the mean at the perfusion target plus an ICP: the highest assumed in an adult, the one treated in a child", () => {
    const highest = protocol.assumedIcpMmHg.value.high;
    const wrong = AGES.filter((ageA) => {
      const { mapMmHg, cppMmHg, icpTreatAboveMmHg, population } = targetsOf({ ageA });
      const icp = population.kind === "adult" ? highest : icpTreatAboveMmHg.value;
      return mapMmHg.target.value !== cppMmHg.target.value + icp;
    });
    expect(wrong).toEqual([]);
  });

  it("raises the mean in herniation to the perfusion target plus the ICP that is then assumed, and lowers nothing", () => {
    const icp = protocol.targets.herniation.assumedIcpMmHg.value;
    const wrong = AGES.filter((ageA) => {
      const [usual, now] = [targetsOf({ ageA }), targetsOf({ ageA, herniating: true })];
      const mean = Math.max(usual.mapMmHg.target.value, usual.cppMmHg.target.value + icp);
      const sbp = usual.sbpMmHg.target.value;
      const floor = usual.population.kind === "adult" ? Math.max(sbp, protocol.targets.herniation.sbpMmHg.value) : sbp;
      return now.mapMmHg.target.value !== mean || now.sbpMmHg.target.value !== floor;
    });
    expect(wrong).toEqual([]);
  });

  it("names the entry that a floor comes from: that of herniation only where it is the higher", () => {
    const path = (ageA: number) => {
      const { mapMmHg, sbpMmHg } = targetsOf({ ageA, herniating: true });
      return [mapMmHg.target.path, sbpMmHg.target.path];
    };
    const own = "targets.populations";
    expect(path(30)).toEqual([`${own}[3].mapMmHg.target`, `${own}[3].sbpMmHg.target`]);
    expect(path(60)).toEqual([`${own}[4].mapMmHg.target`, "targets.herniation.sbpMmHg"]);
    expect(path(6)).toEqual(["targets.herniation.assumedIcpMmHg", `${own}[1].sbpMmHg.target`]);
  });

  it("never lowers a child's limit as the child grows, up to the adult", () => {
    const upTo15 = AGES.filter((ageA) => ageA <= 15).map((ageA) => {
      const { sbpMmHg, mapMmHg, cppMmHg } = targetsOf({ ageA });
      return [sbpMmHg, mapMmHg, cppMmHg].flatMap(({ target, critical }) => [target.value, critical.value]);
    });
    const falls = upTo15.slice(1).filter((now, i) => now.some((limit, k) => limit < (upTo15[i]?.[k] ?? 0)));
    expect(falls).toEqual([]);
  });
});

it("takes the strictest adult floors while no age is known", () => {
  const floors = (t: Targets) =>
    [t.sbpMmHg, t.mapMmHg, t.cppMmHg].map(({ target, critical }) => [target.value, critical.value]);
  const adults = protocol.targets.populations.filter((p) => p.kind === "adult");
  const unknown = floors(targetsOf({}));
  const strictest = unknown.map((_, k) =>
    [0, 1].map((end) => Math.max(...adults.map((p) => floors(targetsOf({ ageA: p.fromAgeA }))[k]?.[end] ?? 0))),
  );
  expect(unknown).toEqual(strictest);
});

describe("a spontaneous bleed", () => {
  it("bounds an adult from above, and no child", () => {
    expect(targetsOf({ ageA: 15, cause: "bleed" }).sbpMmHg.ceiling?.value).toBe(150);
    expect(targetsOf({ ageA: 14, cause: "bleed" }).sbpMmHg.ceiling).toBeUndefined();
  });

  it.each(["injury", "unknown"] as const)("is the only cause with a ceiling: %s has none", (cause) => {
    expect(targetsOf({ ageA: 60, cause }).sbpMmHg.ceiling).toBeUndefined();
  });

  it("yields its ceiling, and not its floor, while herniation is suspected", () => {
    const spared = targetsOf({ ageA: 60, cause: "bleed", herniating: true });
    expect(spared.sbpMmHg.ceiling).toBeUndefined();
    expect(spared.sbpMmHg.target.value).toBe(130);
    expect(spared.suspended.map(({ limit }) => limit.value)).toEqual([150]);
  });

  it("aims between its ends", () => {
    const bleed = protocol.targets.causes.find(({ id }) => id === "bleed")?.sbpRangeMmHg?.value;
    expect(bleed).toEqual({ low: 130, aim: 140, high: 150 });
  });
});
