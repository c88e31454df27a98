import { describe, expect, it } from "vitest";
import type { Utterance } from "../../src/app/ports.ts";
import type { StatementKind } from "../../src/listener/certainty.ts";
import { leastM1, leastM2 } from "../listener/certainSound.ts";
import { playCase, shortFacts } from "./playCase.ts";

const PHONES = 20;

const sound = (costPerPhone: number, words: string, near?: readonly [words: string, nats: number]): Utterance => ({
  by: "listener",
  candidates: [{ words, score: -50 }, ...(near === undefined ? [] : [{ words: near[0], score: -50 - near[1] }])],
  free: { score: -50 - costPerPhone * PHONES, phones: PHONES },
  endedAtMs: 0,
});
const clear = (words: string): Utterance => sound(0, words);
/** Midway between asking and taking. */
const unsure = (kind: StatementKind, words: string): Utterance =>
  sound((leastM1("ask", kind, PHONES) + leastM1("take", kind, PHONES)) / 2, words);
/** The same, because another meaning is near. */
const between = (kind: StatementKind, words: string, rival: string): Utterance =>
  sound(0, words, [rival, (leastM2("ask", kind, PHONES) + leastM2("take", kind, PHONES)) / 2]);

async function played(...said: readonly (string | Utterance)[]) {
  const { answers } = await playCase(said);
  return answers.map((a) => [a.outcome, shortFacts(a.facts), a.reply]);
}

const SIX_FEET = ["height one seven eight centimetres, sex male"];
const KETAMINE =
  "Ketamine, induction. One ten, one one zero, milligrams. One point five per kilo, ideal weight seventy three point two. Shock index not known. Ketamine, which concentration?";

describe("a dose that was not surely heard", () => {
  const asked = ["asked", "asked acoustic", "Dose of ketamine?"];

  it.each([
    ["affirm", ["asked", "closed affirmed, asked always-confirm", KETAMINE]],
    ["negative", ["answered", "closed denied", "Not done. Say it again."]],
    ["dose of ketamine", ["asked", "closed restated, asked always-confirm", KETAMINE]],
    [
      "dose of etomidate",
      ["asked", "closed restated, asked always-confirm", expect.stringMatching(/^Etomidate, induction\. /)],
    ],
    ["disregard", ["answered", "closed denied", "Disregarded: dose of ketamine."]],
    ["one five", ["refused", "", "Dose of ketamine?"]],
    ["kilopascals", ["ignored", "", ""]],
    ["correction one five", ["refused", "", "Say which value."]],
    ["say again", ["answered", "", "Dose of ketamine?"]],
  ])("is asked back, and then: %s", async (answer, then) => {
    const answers = await played(...SIX_FEET, unsure("dose", "dose of ketamine"), clear(answer));
    expect(answers.slice(1)).toEqual([asked, then]);
  });

  it("is offered beside the other drug that it may have been, and neither is said on affirm", async () => {
    const both = between("dose", "dose of ketamine", "dose of etomidate");
    const prompt = "Dose of ketamine, or dose of etomidate?";
    expect((await played(...SIX_FEET, both, clear("affirm"), clear("dose of ketamine"))).slice(1)).toEqual([
      ["asked", "asked acoustic", prompt],
      ["refused", "", prompt],
      ["asked", "closed restated, asked always-confirm", KETAMINE],
    ]);
  });

  it("does not take a question of values away", async () => {
    const dose = unsure("dose", "dose of ketamine");
    const answers = await played(...SIX_FEET, "icp fifteen", dose, clear("affirm"), clear("one five"));
    expect(answers.slice(3)).toEqual([
      ["asked", "closed affirmed, asked always-confirm", KETAMINE],
      ["recorded", "closed affirmed, icp 15", "ICP fifteen, one five. Ketamine, which concentration?"],
    ]);
  });

  it("a number goes past it to the value that waits", async () => {
    const answers = await played("icp fifteen", unsure("dose", "dose of ketamine"), clear("one five"));
    expect(answers[2]).toEqual(["recorded", "closed affirmed, icp 15", "ICP fifteen, one five. Dose of ketamine?"]);
  });

  it("names the drug where there is no dose", async () => {
    const answers = await played("weight one three zero kilos", "weight eighty kilos", "dose of suxamethonium");
    expect(answers[2]?.[2]).toBe("No dose of suxamethonium while the weight is in question. Answer it first.");
  });
});

describe("a step that was not surely heard", () => {
  it.each([
    ["affirm", ["recorded", "closed affirmed, step suction done", "Suction: done."]],
    ["negative", ["answered", "closed denied", "Not done. Say it again."]],
    ["suction ready", ["recorded", "closed restated, step suction done", "Suction: done."]],
    ["suction later", ["recorded", "closed restated, step suction later", "Suction: later."]],
  ])("is named, and then: %s", async (answer, then) => {
    expect(await played(unsure("step", "suction ready"), clear(answer))).toEqual([
      ["asked", "asked acoustic", "Suction: done?"],
      then,
    ]);
  });

  it("is the step that was called when it is asked, whatever is called later", async () => {
    const answers = await played("next", unsure("step", "done"), "next", clear("affirm"));
    expect([answers[1], answers[3]]).toEqual([
      ["asked", "asked acoustic", "Bleeding: done?"],
      ["recorded", "closed affirmed, step bleeding done", "Bleeding: done."],
    ]);
  });

  it.each([
    ["tube eight point zero", "Tube: eight point zero"],
    ["second medic calls pressure", "Second medic calls pressure"],
    ["osmotic not needed not indicated", "Osmotic drug: not needed, not indicated"],
  ])("keeps what was said with it: %s", async (said, readBack) => {
    const { answers } = await playCase([unsure("step", said), clear("affirm")]);
    const [asked, affirmed] = answers;
    const kept = affirmed?.facts.flatMap((f) => (f.type === "step.answered" ? [[f.value, f.role, f.reason]] : []));
    const meant = (await playCase([said])).answers[0]?.facts;
    expect([asked?.outcome, affirmed?.outcome, affirmed?.reply]).toEqual(["asked", "recorded", `${readBack}.`]);
    expect(kept).toEqual(meant?.flatMap((f) => (f.type === "step.answered" ? [[f.value, f.role, f.reason]] : [])));
    expect(kept?.flat().filter((part) => part !== undefined)).toHaveLength(1);
  });

  it("is not asked where no step is called", async () => {
    expect(await played(unsure("step", "done"))).toEqual([["refused", "", "Say again."]]);
  });
});

describe("a command that changes something and was not surely heard", () => {
  const loose = unsure("command", "disregard");

  it.each(["affirm", "disregard"])("disregard is carried out on %s", async (answer) => {
    expect((await played("icp one five", loose, clear(answer), "read back")).slice(1)).toEqual([
      ["asked", "asked acoustic", "Disregard: ICP fifteen, one five?"],
      ["recorded", "closed affirmed, struck 1", "Disregarded: ICP fifteen, one five."],
      ["answered", "", "Nothing recorded yet."],
    ]);
  });

  it("disregard strikes nothing but what was named", async () => {
    const answers = await played("rate ninety", loose, "sats ninety six", clear("affirm"), "read back");
    expect(answers.slice(3)).toEqual([
      ["answered", "closed affirmed", "The last entry is another one now. Say disregard again."],
      ["answered", "", "Sats ninety six."],
    ]);
  });

  it("disregard must be said again while a question waits, and where there is nothing to disregard", async () => {
    expect((await played("icp fifteen", loose))[1]).toEqual(["refused", "", "Say again."]);
    expect(await played(loose)).toEqual([["refused", "", "Say again."]]);
  });

  it("stand by is carried out on affirm alone", async () => {
    expect(await played(unsure("command", "stand by"), clear("affirm"))).toEqual([
      ["asked", "asked acoustic", "Stand by?"],
      ["answered", "closed affirmed, stand by", "Standing by."],
    ]);
  });
});

it("nobody answers: nothing is done, and that is said", async () => {
  const { answers, spoke } = await playCase([unsure("dose", "dose of ketamine"), "[2:00] affirm"]);
  expect(spoke.map((s) => s.spoke)).toContain("Not confirmed: dose of ketamine.");
  expect(answers[1]?.outcome).toBe("ignored");
});
