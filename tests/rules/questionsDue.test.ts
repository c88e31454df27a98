import { describe, expect, it } from "vitest";
import { defaultProtocol as protocol } from "../../src/protocol/defaultProtocol.ts";
import { questionsDue } from "../../src/rules/questionsDue.ts";
import { CaseBuilder } from "../log/caseBuilder.ts";

const closedAt = (c: CaseBuilder, seconds: number): readonly unknown[] =>
  questionsDue(c.state, protocol, seconds * 1000).map((fact) =>
    fact.type === "question.closed" ? fact.questionId : fact,
  );

describe("questions nobody answers", () => {
  it("close after thirty seconds as unconfirmed", () => {
    const c = new CaseBuilder();
    c.at(10).ask("q1");
    expect(closedAt(c, 39.9)).toEqual([]);
    expect(questionsDue(c.state, protocol, 40_000)).toEqual([
      { type: "question.closed", questionId: "q1", outcome: "unconfirmed" },
    ]);
  });
  it("close oldest first, each by its own clock", () => {
    const c = new CaseBuilder();
    c.at(0).ask("q1");
    c.at(5).ask("q2");
    c.at(20).ask("q3");
    expect(closedAt(c, 36)).toEqual(["q1", "q2"]);
  });
  it("wait while standing by, and have their full time again afterwards", () => {
    const c = new CaseBuilder();
    c.at(0).ask("q1");
    c.at(10).add({ type: "standBy.started", untilMs: 70_000 });
    expect(closedAt(c, 69)).toEqual([]);
    expect(closedAt(c, 99)).toEqual([]);
    expect(closedAt(c, 100)).toEqual(["q1"]);
  });
  it("are closed once", () => {
    const c = new CaseBuilder();
    c.ask("q1");
    c.at(31).add(...questionsDue(c.state, protocol, 31_000));
    expect(closedAt(c, 100)).toEqual([]);
  });
});
