import { describe, expect, it } from "vitest";
import { emptyCase } from "../../src/log/caseState.ts";
import { selectTargets } from "../../src/log/targets.ts";
import { defaultProtocol } from "../../src/protocol/defaultProtocol.ts";
import { showCaseTime } from "../../src/cli/talkLine.ts";
import { playCase, shortFacts } from "./playCase.ts";

const { timers } = defaultProtocol;
const targets = selectTargets(emptyCase, defaultProtocol);
const at = (seconds: number): string => `[${showCaseTime(seconds * 1000)}]`;
const spokeAt = (spoke: readonly { at: string; spoke: string; priority: string }[]) =>
  spoke.map((s) => `${s.at} ${s.priority} ${s.spoke}`);

describe("questions and time", () => {
  const timeout = timers.questionTimeoutS.value;

  it("turns an unanswered question into an unconfirmed statement, on time, aloud, once", async () => {
    const { answers, spoke } = await playCase(["icp fifteen", `${at(timeout + 5)} affirm`, "one five", "status"]);
    expect(spokeAt(spoke)).toEqual([`${showCaseTime(timeout * 1000)} low Not confirmed: i c p fifteen.`]);
    expect(answers.slice(1).map((a) => [a.outcome, a.facts.length])).toEqual([
      ["ignored", 0],
      ["ignored", 0],
      ["answered", 0],
    ]);
    expect(answers.at(-1)?.reply).toBe("No pressure recorded yet.");
  });

  it("takes an answer in the second before", async () => {
    const { answers, spoke } = await playCase(["icp fifteen", `${at(timeout - 1)} one five`, at(timeout + 5)]);
    expect(shortFacts(answers[1]?.facts ?? [])).toBe("closed affirmed, icp 15");
    expect(spoke).toEqual([]);
  });

  it("says several that are due in the same moment oldest first", async () => {
    const { spoke } = await playCase(["icp fifteen", "weight eighty kilos", at(timeout)]);
    expect(spoke.map((s) => s.spoke)).toEqual(["Not confirmed: i c p fifteen.", "Not confirmed: weight eighty kilos."]);
  });

  it("holds questions while standing by and gives them their full time afterwards", async () => {
    const until = timers.standByS.value;
    const { answers, spoke } = await playCase([
      "icp fifteen",
      "stand by",
      at(until + timeout - 1),
      "say again",
      at(until + timeout),
    ]);
    expect(answers.at(-1)?.reply).toBe("ICP fifteen, one five?");
    expect(spokeAt(spoke)).toEqual([`${showCaseTime((until + timeout) * 1000)} low Not confirmed: i c p fifteen.`]);
  });
});

describe("alerts and time", () => {
  const high = timers.reannounceS.high.value;
  /** Nobody has acknowledged it: the first time it is said again sooner. */
  const first = timers.escalateS.high.value;
  const medium = timers.reannounceS.medium.value;

  it("announces a high alert again by its clock, with the age of its number", async () => {
    const { spoke } = await playCase(["map 65", at(first + 2 * high)]);
    expect(spokeAt(spoke)).toEqual([
      "0:00 high Measured MAP sixty five, twenty five under ninety.",
      `${showCaseTime(first * 1000)} high Measured MAP sixty five, twenty five under ninety.`,
      `${showCaseTime((first + high) * 1000)} high Measured MAP sixty five, twenty five under ninety. Two minutes old.`,
      `${showCaseTime((first + 2 * high) * 1000)} high Measured MAP sixty five, twenty five under ninety. Three minutes old.`,
    ]);
  });

  it("announces a medium alert again by its own, slower clock", async () => {
    const { spoke } = await playCase(["map 85", at(medium - 1), "heart rate ninety", at(medium)]);
    expect(spoke.map((s) => [s.at, s.priority])).toEqual([
      ["0:00", "medium"],
      [showCaseTime(medium * 1000), "medium"],
    ]);
  });

  it("says a worse band at once and a milder one not at all", async () => {
    const { spoke } = await playCase(["map 85", "[0:10] map 75", "[0:20] map 88"]);
    expect(spoke.map((s) => [s.at, s.priority])).toEqual([
      ["0:00", "medium"],
      ["0:10", "high"],
    ]);
  });

  it("clears only after two readings well above the band, and raises anew after that", async () => {
    const said = ["map 85", "[0:10] map 95", "[0:20] map 91", "[0:30] map 95", "[0:40] map 96", "[0:50] map 88"];
    const { answers, spoke } = await playCase(said);
    const cleared = answers.map((a) => a.facts.some((f) => f.type === "alert.cleared"));
    expect(cleared).toEqual([false, false, false, false, true, false]);
    expect(spoke.map((s) => s.at)).toEqual(["0:00", "0:50"]);
  });

  it("withdraws an alert whose value was corrected, and never announces it again", async () => {
    const { answers, spoke } = await playCase(["map 65", "[0:10] correction map 95", at(3 * high)]);
    expect(answers[1]?.facts.some((f) => f.type === "alert.cleared" && f.alertId === "mapLow")).toBe(true);
    expect(spoke.map((s) => s.at)).toEqual(["0:00"]);
  });

  it("holds a medium alert while standing by, but not a high one", async () => {
    const standBy = timers.standByS.value;
    const quiet = await playCase(["map 85", `${at(medium - 10)} stand by`, at(medium - 10 + standBy)]);
    expect(quiet.spoke.map((s) => s.at)).toEqual(["0:00", showCaseTime((medium - 10 + standBy) * 1000)]);
    const loud = await playCase(["map 65", `${at(first - 10)} stand by`, at(first)]);
    expect(loud.spoke.map((s) => s.at)).toEqual(["0:00", showCaseTime(first * 1000)]);
  });

  it("repeats the alert that was said last on say again", async () => {
    const { answers } = await playCase(["map 65", "[1:35] say again"]);
    expect(answers[1]?.reply).toBe("Measured MAP sixty five, twenty five under ninety. Two minutes old.");
  });

  it("never judges a value that is only in question", async () => {
    const { spoke } = await playCase(["map one twenty", "[0:05] map six zero", "[0:06] disregard"]);
    expect(spoke).toEqual([]);
  });

  it("says of a pressure on target only, once, that it has grown old", async () => {
    const { spoke } = await playCase([`map ${targets.mapMmHg.target.value}`, "[60:00]"]);
    expect(spokeAt(spoke)).toEqual([`${showCaseTime(timers.staleAfterS.value * 1000)} low Pressure ten minutes old.`]);
  });
});

describe("ages in the status", () => {
  it.each([
    [4, /on target[^.]*\.(?!.*(second|minute|hour))/i],
    [40, /\. Forty seconds( old)?\.$/],
    [120, /\. Two minutes( old)?\.$/],
    [4200, /\. An hour ten( old)?\.$/],
  ])("after %d s", async (seconds, age) => {
    const { answers } = await playCase(["120/80", `${at(seconds)} status`]);
    expect(answers[1]?.reply).toMatch(age);
  });

  it("is that of the oldest input", async () => {
    const { answers } = await playCase(["icp two two", "[3:00] 120/80", "status"]);
    expect(answers[2]?.reply).toMatch(/CPP seventy one.*\. Three minutes( old)?\.$/);
  });
});
