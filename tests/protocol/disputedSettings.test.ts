import { describe, expect, it } from "vitest";
import { defaultProtocol as protocol } from "../../src/protocol/defaultProtocol.ts";

/** Where sources disagree: what is argued about, where its setting stands, and what this file takes. */
type Row = readonly [topic: string, path: string, taken: unknown];

const DISPUTED: readonly Row[] = [
  ["systolic floor in injury, 15 to 49 years", "targets.populations.adult.sbpMmHg.target.value", 110],
  ["systolic floor in injury, 50 to 69 years", "targets.populations.adultFrom50.sbpMmHg.target.value", 100],
  ["systolic floor in injury, 70 years and over", "targets.populations.adultFrom70.sbpMmHg.target.value", 110],
  [
    "injury against bleed: a ceiling only once a bleed is said",
    "targets.causes.bleed.sbpRangeMmHg.value",
    { low: 130, aim: 140, high: 150 },
  ],
  ["high pressure in herniation", "targets.herniationSparesPressure.value", true],
  ["the ICP assumed in herniation", "targets.herniation.assumedIcpMmHg.value", 30],
  ["systolic floor of every adult in herniation", "targets.herniation.sbpMmHg.value", 110],
  ["perfusion target, adults", "targets.populations.adult.cppMmHg.target.value", 60],
  ["perfusion target, children", "targets.populations.child.cppMmHg.target.value", 45],
  ["level of the transducer", "pressures.transducerLevel.value", "heart"],
  ["ICP that is treated, adults", "targets.populations.adult.icpTreatAboveMmHg.value", 22],
  ["ICP that is treated, children", "targets.populations.child.icpTreatAboveMmHg.value", 20],
  ["mean pressure while ICP is unknown", "targets.populations.adult.mapMmHg.target.value", 90],
  ["the ICP assumed meanwhile", "assumedIcpMmHg.value", { low: 20, high: 30 }],
  ["end-tidal CO2, usual", "targets.etco2MmHg.usual.value", { low: 35, high: 45 }],
  ["end-tidal CO2, herniation", "targets.etco2MmHg.herniation.value", { low: 30, high: 35 }],
  ["osmotic treatment before hospital", "permissions.osmotherapyPrehospital.value", false],
  ["which osmotic: mannitol's place", "osmotics.mannitol20.doses.adult.usual", 0.5],
  ["mannitol while systolic is under target", "permissions.mannitolBelowSbpTarget.value", false],
  ["3 % saline in children, for each kilogram", "osmotics.sodiumChloride3.doses.child.high", 5],
  ["3 % saline in children, most at once", "osmotics.sodiumChloride3.doses.child.cap", 250],
  ["route of 23.4 % saline", "osmotics.sodiumChloride23point4.centralLineOnly.value", true],
  ["induction, ketamine halved in shock", "drugs.ketamine.doses.adultInduction.shock.usual", 0.75],
  ["induction, etomidate halved in shock", "drugs.etomidate.doses.adultInduction.shock.usual", 0.15],
  ["weight for rocuronium", "drugs.rocuronium.doses.adultParalysis.weight", "ideal"],
  ["most phenylephrine at once", "drugs.phenylephrine.doses.pushDose.cap", 200],
  ["tranexamic acid before hospital", "permissions.tranexamicAcidPrehospital.value", false],
  ["tranexamic acid, how much first", "drugs.tranexamic acid.doses.first.usual", 1],
  ["where andexanet is shown", "drugs.andexanet alfa.regions.value", ["international"]],
  ["shock index that warns", "shock.warnAt.value", 0.8],
  ["shock index that warns strongly", "shock.strongAt.value", 0.9],
  ["mnemonic of the handover", "handover.structure.value", "ATMIST"],
  ["systolic under which published depth and length count", "lowPressure.publishedSbpFloorMmHg.value", 90],
];

type Node = Readonly<Record<string, unknown>>;

/** Lists are entered by the id of a member, so that a row says what it means. */
function enter(node: unknown, key: string): unknown {
  const found: unknown = Array.isArray(node)
    ? (node as readonly Node[]).find(({ id }) => id === key)
    : (node as Node | undefined)?.[key];
  if (found === undefined) throw new Error(`nothing is called ${key}`);
  return found;
}

/** Every value that is passed through on the way, the last one last. */
const walk = (path: string): readonly unknown[] =>
  path.split(".").reduce<readonly unknown[]>((way, key) => [...way, enter(way.at(-1), key)], [protocol]);

type Choice = { readonly instead: readonly string[]; readonly reason: string };

/** The reason stands beside the value, or with the dose that the amount is part of: never with something wider. */
const choiceAt = (path: string): Choice | undefined =>
  walk(path)
    .slice(path.endsWith(".value") ? -2 : -3)
    .map((node) => (node as { readonly choice?: Choice }).choice)
    .find((choice) => choice !== undefined);

describe("what sources disagree about is a setting", () => {
  it.each(DISPUTED)("%s", (_topic, path, taken) => expect(walk(path).at(-1)).toEqual(taken));
});

describe("each such setting says what else could stand there, and why this does", () => {
  it.each(DISPUTED)("%s", (_topic, path) => {
    const choice = choiceAt(path);
    expect(choice?.instead.length).toBeGreaterThan(0);
    expect(choice?.instead.every((other) => other.trim() !== "")).toBe(true);
    expect(choice?.reason.trim().split(" ").length).toBeGreaterThan(4);
  });
});

it("prefers no induction drug: each names the other as what could stand instead", () => {
  const others = ["ketamine", "etomidate"].map((id) => choiceAt(`drugs.${id}.doses.adultInduction.usual`)?.instead);
  expect(others[0]).toContain("etomidate");
  expect(others[1]).toContain("ketamine");
});

it("lists hypertonic saline before mannitol", () => {
  const solutes = protocol.osmotics.map(({ solute }) => solute);
  expect(solutes.lastIndexOf("sodiumChloride")).toBeLessThan(solutes.indexOf("mannitol"));
});
