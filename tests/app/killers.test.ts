import { describe, expect, it } from "vitest";
import { killersOpen } from "../../src/log/steps/openSteps.ts";
import type { NewFact } from "../../src/log/facts.ts";
import { asking, context, ketamine, rocuronium, SAID, TalkedCase } from "./listState.ts";
import { shortFacts } from "./playCase.ts";

const ALL = "Critical, not done: neuro exam, oxygen, push dose, capnograph, failure plan.";
const answered = (...stepIds: readonly string[]): readonly NewFact[] =>
  stepIds.map((stepId) => ({ type: "step.answered", stepId, answer: "done", ...SAID }));
const MOST = answered("neuroExam", "preoxygenation", "capnograph");
const LEFT = "Critical, not done: push dose, failure plan.";
const open = ({ state }: TalkedCase): readonly string[] =>
  killersOpen(state.log, context.protocol, 0).map(({ step }) => step.id);

/** Said unasked, the new phase aside: that it changed is said each time. */
const saidOf = ({ announcements }: ReturnType<TalkedCase["say"]>) =>
  announcements.filter(({ alertId }) => alertId !== "phase");

describe("the warning of killer items", () => {
  it("names those open as the drugs go in, once", () => {
    const c = new TalkedCase(...MOST, asking(ketamine), asking(rocuronium));
    const first = c.say("affirm");
    expect(saidOf(first)).toEqual([{ text: LEFT, priority: "medium", alertId: "prompt:killers" }]);
    expect(first.facts.filter(({ type }) => type === "prompt.announced")).toHaveLength(1);
    expect(c.say("sats ninety six").announcements).toEqual([]);
    expect(c.wait(600).filter((text) => text.startsWith("Critical"))).toEqual([]);
  });

  it("names all where none is done", () => {
    expect(saidOf(new TalkedCase(asking(ketamine)).say("affirm")).map(({ text }) => text)).toEqual([ALL]);
  });

  it("says nothing where all are done, nor later when one opens again", () => {
    const c = new TalkedCase(...MOST, ...answered("pushDose", "failurePlan"), asking(ketamine));
    expect(saidOf(c.say("affirm"))).toEqual([]);
    expect(saidOf(c.say("plan not ready"))).toEqual([]);
  });

  it("is said again when the induction was taken back and comes anew", () => {
    const c = new TalkedCase(...MOST, { type: "phase.entered", phase: "induce", ...SAID }, asking(ketamine));
    expect(c.say("affirm").announcements).toEqual([]);
    const back: NewFact = { type: "phase.entered", phase: "prepare", ...SAID };
    const again = new TalkedCase(...MOST, { type: "phase.entered", phase: "induce", ...SAID }, back, asking(ketamine));
    expect(saidOf(again.say("affirm")).map(({ text }) => text)).toEqual([LEFT]);
  });
});

describe("waiving aloud", () => {
  const warned = () => {
    const c = new TalkedCase(...MOST, asking(ketamine));
    c.say("affirm");
    return c;
  };

  it("waives what was just warned of, with the reason, and can be taken back in one", () => {
    const c = warned();
    const turn = c.say("waive no time");
    expect([turn.answer?.reply, shortFacts(turn.facts)]).toEqual([
      "Waived, no time: push dose, failure plan.",
      "step pushDose waived, step failurePlan waived",
    ]);
    expect(turn.facts.map((f) => (f.type === "step.answered" ? f.reason : undefined))).toEqual(["no time", "no time"]);
    expect(open(c)).toEqual([]);
    expect(c.reply("disregard")).toBe(
      "Disregarded: Waived, no time: push dose, failure plan. The steps are open again.",
    );
    expect(open(c)).toEqual(["pushDose", "failurePlan"]);
  });

  it("waives only what is still open of it", () => {
    const c = warned();
    c.say("plan agreed");
    c.say("sats ninety six");
    expect(c.reply("waive no time")).toBe("Waived, no time: push dose.");
    expect(open(c)).toEqual([]);
  });

  it("means the step that was called since", () => {
    const c = warned();
    expect(c.reply("next")).toBe("Bleeding stopped, pelvis bound if suspected?");
    expect(c.reply("waive")).toBe("Waived: bleeding.");
    expect(open(c)).toEqual(["pushDose", "failurePlan"]);
  });

  it("means no warning of an induction that was taken back", () => {
    const struck = new TalkedCase(...MOST, asking(ketamine));
    const turn = struck.say("affirm");
    const fact = turn.facts.find(({ type }) => type === "drug.given");
    struck.add({ type: "entry.struck", targetIds: [fact?.id ?? ""], reason: "disregarded" });
    expect(struck.reply("waive")).toBe("No step is open. Say next.");
  });
});

describe("the list as the drugs go in", () => {
  it("is not read over the attempt, and is there when it is asked for", () => {
    const c = new TalkedCase();
    c.say("read the list");
    c.add(asking(ketamine));
    const turn = c.say("affirm");
    expect(shortFacts(turn.facts)).toContain("list off");
    expect(c.reply("sats ninety six")).toBe("Sats ninety six.");
    expect(c.reply("read the list")).toBe("Bleeding stopped, pelvis bound if suspected?");
    expect(c.reply("sats ninety five")).toBe("Sats ninety five. Back to bleeding.");
  });
});
