import { describe, expect, it } from "vitest";
import { playCase } from "./playCase.ts";

const CHILD = ["six year old girl", "heart rate one hundred", "one hundred over sixty"];
const DRAWN_UP = [...CHILD, "ketamine", "ten milligrams per mil", "affirm"];

describe("given, without an amount", () => {
  const givenAfter = async (...lines: readonly string[]) =>
    (await playCase([...lines, "ketamine given"])).answers.at(-1);

  it.each<[string, readonly string[], string]>([
    ["is the dose that was spoken", DRAWN_UP, "Ketamine, thirty eight, three eight, milligrams, given?"],
    [
      "is still that dose when a weight has changed the plan, and the plan is said beside it",
      [...DRAWN_UP, "weight twenty two kilos", "affirm"],
      "Ketamine, thirty eight, three eight, milligrams, given? Plan was thirty three, three three, milligrams.",
    ],
    [
      "is the new dose once that was spoken",
      [...DRAWN_UP, "weight twenty two kilos", "affirm", "ketamine"],
      "Ketamine, thirty four, three four, milligrams, given?",
    ],
    [
      "is still that dose when shock has changed the plan",
      [...DRAWN_UP, "ninety over fifty five", "heart rate one fifty two"],
      "Ketamine, thirty eight, three eight, milligrams, given? Plan was eighteen point eight, one eight point eight, milligrams.",
    ],
    [
      "is the planned dose where none was spoken",
      CHILD,
      "Ketamine, thirty seven point five, three seven point five, milligrams, given?",
    ],
  ])("%s", async (_what, lines, readBack) => {
    expect(await givenAfter(...lines)).toMatchObject({ outcome: "asked", reply: readBack });
  });
});
