import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { selectNextStep, selectProgress } from "../../../src/log/steps/currentList.ts";
import { defaultProtocol as protocol } from "../../../src/protocol/defaultProtocol.ts";
import { CaseBuilder } from "../caseBuilder.ts";

const next = (c: CaseBuilder): string | undefined => selectNextStep(c.state, protocol, c.nowMs)?.step.id;
const ids = protocol.groups
  .filter((group) => group.phase === "prepare")
  .flatMap((group) => group.steps.map((step) => step.id));
const total = ids.length;

/** Answers every step that still comes, so that only those put off are left. */
function answerAllBut(c: CaseBuilder, left: readonly string[]): void {
  for (const id of ids) if (!left.includes(id)) c.answer(id, "done");
}

describe("the next step", () => {
  it("is the first of the list, with its place", () => {
    const step = selectNextStep(new CaseBuilder().state, protocol, 0);
    expect(step).toMatchObject({ step: { id: "bleeding" }, group: { id: "patient" }, number: 1, total });
  });
  it("is the first without an answer, whatever the order of answers", () => {
    const c = new CaseBuilder();
    c.answer("suction", "done");
    c.answer("bleeding", "not-needed");
    expect(next(c)).toBe("meanPressure");
  });
  it("passes over a step put off, and comes back to it after the rest, the longest put off first", () => {
    const c = new CaseBuilder();
    c.at(1).answer("tube", "later");
    c.at(2).answer("bleeding", "later");
    expect(next(c)).toBe("meanPressure");
    answerAllBut(c, ["tube", "bleeding"]);
    expect(next(c)).toBe("tube");
    c.at(3).answer("tube", "later");
    expect(next(c)).toBe("bleeding");
  });
  it("is none when all are closed", () => {
    const c = new CaseBuilder();
    answerAllBut(c, []);
    expect(next(c)).toBeUndefined();
  });
  it("returns to a step whose answer was struck", () => {
    const c = new CaseBuilder();
    const [answer] = c.answer("bleeding", "done");
    expect(next(c)).toBe("meanPressure");
    c.strike(answer ?? "");
    expect(next(c)).toBe("bleeding");
  });
});

describe("steps that the record answers", () => {
  it("mean pressure: closed while at target, open again when it falls", () => {
    const c = new CaseBuilder();
    c.answer("bleeding", "done");
    c.say({ map: 90 });
    expect(next(c)).toBe("fluid");
    c.say({ map: 89 });
    expect(next(c)).toBe("meanPressure");
  });
  it("mean pressure: at the target of this patient", () => {
    const c = new CaseBuilder();
    c.answer("bleeding", "done");
    c.say({ map: 65 });
    expect(next(c)).toBe("meanPressure");
    c.patient({ ageA: 6 });
    expect(next(c)).toBe("fluid");
    c.say({ map: 64 });
    expect(next(c)).toBe("meanPressure");
  });
  it("neurological findings: closed once eyes, motor and both pupils are recorded, by number or finding", () => {
    const c = new CaseBuilder();
    answerAllBut(c, ["neuroExam"]);
    c.say({ gcsEye: 1, gcsMotor: 4 });
    c.find({ code: "pupilLeft", finding: "fixed" });
    expect(next(c)).toBe("neuroExam");
    const right = c.say({ pupilRight: 3 });
    expect(next(c)).toBeUndefined();
    c.strike(...right);
    expect(next(c)).toBe("neuroExam");
  });
});

describe("what follows the tube", () => {
  const after = protocol.groups.filter((group) => group.phase === "afterTube");
  const afterIds = after.flatMap((group) => group.steps.map((step) => step.id));
  it("is in the protocol, but neither called nor counted as preparation", () => {
    expect(afterIds.length).toBeGreaterThan(0);
    const c = new CaseBuilder();
    expect(selectNextStep(c.state, protocol, c.nowMs)?.total).toBe(total);
    for (const id of afterIds) c.answer(id, "done");
    expect(selectProgress(c.state, protocol, c.nowMs)).toMatchObject({ done: 0, total });
    expect(selectProgress(c.state, protocol, c.nowMs).groups.map((g) => g.group.id)).not.toContain(after[0]?.id);
    answerAllBut(c, []);
    for (const id of afterIds) c.answer(id, "later");
    expect(next(c)).toBeUndefined();
  });
});

describe("progress", () => {
  it("counts done and waived, not put off, by group and in all", () => {
    const c = new CaseBuilder();
    c.answer("bleeding", "done");
    c.answer("suction", "not-needed");
    c.answer("tube", "later");
    const progress = selectProgress(c.state, protocol, c.nowMs);
    expect({ done: progress.done, total: progress.total }).toEqual({ done: 2, total });
    expect(progress.groups.map((g) => [g.group.id, g.done, g.total])).toEqual([
      ["patient", 1, 8],
      ["drugs", 0, 6],
      ["equipment", 1, 8],
      ["team", 0, 5],
      ["plan", 0, 6],
    ]);
  });
  it("any answers: there is a next step exactly while something is not done, and it is never a closed one", () => {
    const answers = fc.array(
      fc.tuple(fc.constantFrom(...ids), fc.constantFrom("done" as const, "not-needed" as const, "later" as const)),
      { maxLength: 60 },
    );
    fc.assert(
      fc.property(answers, (given) => {
        const c = new CaseBuilder();
        given.forEach(([id, answer], i) => c.at(i).answer(id, answer));
        const { done } = selectProgress(c.state, protocol, c.nowMs);
        const step = next(c);
        expect(step === undefined).toBe(done === total);
        const last = given.findLast(([id]) => id === step)?.[1];
        expect(last === undefined || last === "later").toBe(true);
      }),
    );
  });
});
