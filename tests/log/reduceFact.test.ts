import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { VitalCode } from "../../src/core/vitals.ts";
import { emptyCase, type CaseState } from "../../src/log/caseState.ts";
import type { Fact } from "../../src/log/facts.ts";
import { reduceFact, reduceFacts } from "../../src/log/reduceFact.ts";
import { selectLastStatement } from "../../src/log/statements.ts";
import { CaseBuilder } from "./caseBuilder.ts";

type Act =
  | { readonly do: "say"; readonly values: Partial<Record<VitalCode, number>> }
  | { readonly do: "find"; readonly code: "pupilLeft" | "gcsVerbal" }
  | { readonly do: "sex" }
  | { readonly do: "cause"; readonly cause: "injury" | "bleed" }
  | { readonly do: "herniation"; readonly present: boolean }
  | { readonly do: "answer"; readonly stepId: string; readonly answer: "done" | "later" }
  | { readonly do: "strike"; readonly picks: readonly number[] };

const value = fc.integer({ min: 40, max: 100 });
const acts: fc.Arbitrary<readonly Act[]> = fc.array(
  fc.oneof(
    fc.record({
      do: fc.constant("say" as const),
      values: fc.record({ sbp: value, dbp: value, map: value, icp: value, spo2: value }, { requiredKeys: [] }),
    }),
    fc.record({ do: fc.constant("find" as const), code: fc.constantFrom("pupilLeft" as const, "gcsVerbal" as const) }),
    fc.record({ do: fc.constant("sex" as const) }),
    fc.record({ do: fc.constant("cause" as const), cause: fc.constantFrom("injury" as const, "bleed" as const) }),
    fc.record({ do: fc.constant("herniation" as const), present: fc.boolean() }),
    fc.record({
      do: fc.constant("answer" as const),
      stepId: fc.constantFrom("suction", "tube"),
      answer: fc.constantFrom("done" as const, "later" as const),
    }),
    fc.record({ do: fc.constant("strike" as const), picks: fc.array(fc.nat(), { minLength: 1, maxLength: 3 }) }),
  ),
  { maxLength: 40 },
);

function play(script: readonly Act[]): CaseBuilder {
  const c = new CaseBuilder();
  script.forEach((act, i) => {
    c.at(i);
    if (act.do === "say") c.say(act.values);
    else if (act.do === "find")
      c.find(
        act.code === "pupilLeft" ? { code: act.code, finding: "fixed" } : { code: act.code, finding: "not-testable" },
      );
    else if (act.do === "sex")
      c.add({ type: "sex.recorded", sex: "male", readingId: `s${i}`, heard: "male", by: "typed" });
    else if (act.do === "cause") c.patient({ cause: act.cause });
    else if (act.do === "herniation") c.patient({ herniation: act.present });
    else if (act.do === "answer") c.answer(act.stepId, act.answer);
    else if (c.facts.length > 0) c.strike(...act.picks.map((pick) => `f${pick % c.facts.length}`));
  });
  return c;
}

/** What was recorded, without the fact numbers: these count struck facts too. */
const recorded = ({ vitals, findings, sex, cause, herniation, steps }: CaseState): unknown =>
  JSON.parse(
    JSON.stringify({ vitals, findings, sex, cause, herniation, steps }, (key, v: unknown) =>
      key === "seq" ? undefined : v,
    ),
  );

const unstruck = (facts: readonly Fact[]): readonly Fact[] => {
  const struck = new Set(facts.flatMap((fact) => (fact.type === "entry.struck" ? fact.targetIds : [])));
  return facts.filter((fact) => fact.type !== "entry.struck" && !struck.has(fact.id));
};

describe("any stream of recordings and strikes", () => {
  it("gives what the unstruck recordings alone give", () => {
    fc.assert(
      fc.property(acts, (script) => {
        const { facts, state } = play(script);
        expect(recorded(state)).toEqual(recorded(reduceFacts(unstruck(facts))));
      }),
      { numRuns: 300 },
    );
  });
  it("gives the same one by one as all at once, from any point on", () => {
    fc.assert(
      fc.property(acts, fc.nat(), (script, cut) => {
        const { facts, state } = play(script);
        const at = facts.length === 0 ? 0 : cut % facts.length;
        expect(reduceFacts(facts)).toEqual(state);
        expect(reduceFacts(facts.slice(at), reduceFacts(facts.slice(0, at)))).toEqual(state);
        expect(state.factCount).toBe(facts.length);
      }),
    );
  });
  it("never changes a state that was handed out", () => {
    fc.assert(
      fc.property(acts, (script) => {
        const { facts } = play(script);
        let state = emptyCase;
        for (const fact of facts) {
          const before = JSON.stringify(state);
          const next = reduceFact(state, fact);
          expect(JSON.stringify(state)).toBe(before);
          state = next;
        }
      }),
      { numRuns: 50 },
    );
  });
});

describe("strikes", () => {
  it("bring the earlier value back and share what is older", () => {
    const c = new CaseBuilder();
    c.say({ icp: 20 });
    const older = c.state.vitals.icp;
    const [wrong] = c.say({ icp: 80 });
    c.strike(wrong ?? "");
    expect(c.state.vitals.icp).toBe(older);
  });
  it("do not reach further back when repeated: nothing is left to disregard", () => {
    const c = new CaseBuilder();
    c.say({ hr: 90 });
    const ids = c.say({ sbp: 120, dbp: 60 });
    c.strike(...ids);
    expect(c.state.lastReading).toBeUndefined();
    expect(c.state.vitals.hr?.entry.value).toBe(90);
  });
  it("leave the rest of the reading to act on", () => {
    const c = new CaseBuilder();
    const [sbp, dbp] = c.say({ sbp: 120, dbp: 60 });
    c.strike(sbp ?? "");
    expect(c.state.lastReading?.factIds).toEqual([dbp]);
  });
  it("of an unknown id change nothing that was recorded", () => {
    const c = new CaseBuilder();
    c.say({ sbp: 120, dbp: 60 });
    const before = c.state.vitals;
    c.strike("no such fact");
    expect(c.state.vitals).toBe(before);
  });
});

describe("cause and herniation", () => {
  it("the newest counts, and the one before it comes back when it is struck", () => {
    const c = new CaseBuilder();
    c.patient({ cause: "injury", herniation: true });
    const [cause, herniation] = c.patient({ cause: "bleed", herniation: false });
    expect([c.state.cause?.cause, c.state.herniation?.present]).toEqual(["bleed", false]);
    c.strike(cause ?? "", herniation ?? "");
    expect([c.state.cause?.cause, c.state.herniation?.present]).toEqual(["injury", true]);
  });
  it("are part of the last reading, as one statement with the rest of the breath", () => {
    const c = new CaseBuilder();
    const heard = { readingId: "r", heard: "as said", by: "typed" } as const;
    const ids = c.add(
      { type: "sex.recorded", sex: "female", ...heard },
      { type: "cause.recorded", cause: "bleed", ...heard },
      { type: "herniation.recorded", present: false, ...heard },
    );
    expect(selectLastStatement(c.state)).toEqual({
      statement: { vitals: [], findings: [], sex: "female", cause: "bleed", herniation: false },
      factIds: ids,
      seq: 2,
    });
    c.strike(ids[1] ?? "");
    expect(selectLastStatement(c.state)?.statement).toEqual({
      vitals: [],
      findings: [],
      sex: "female",
      herniation: false,
    });
  });
});

describe("questions, steps, stand-by, alerts, a new case", () => {
  it("keeps open questions newest first and drops the closed one", () => {
    const c = new CaseBuilder();
    c.ask("q1");
    c.ask("q2");
    expect(c.state.questions.map((q) => q.id)).toEqual(["q2", "q1"]);
    c.add({ type: "question.closed", questionId: "q1", outcome: "affirmed" });
    expect(c.state.questions.map((q) => q.id)).toEqual(["q2"]);
  });
  it("an answer clears the called step only if it answers that step", () => {
    const c = new CaseBuilder();
    c.add({ type: "step.called", stepId: "suction" });
    c.answer("tube", "done");
    expect(c.state.calledStepId).toBe("suction");
    c.answer("suction", "later");
    expect(c.state.calledStepId).toBeUndefined();
  });
  it("a worse alert is new to say, a milder one is not", () => {
    const c = new CaseBuilder();
    const raise = (priority: "medium" | "high"): void => {
      c.add({ type: "alert.raised", alertId: "mapLow", priority, value: 70 });
    };
    raise("medium");
    c.add({ type: "alert.announced", alertId: "mapLow", priority: "medium", value: 70, text: "MAP" });
    raise("high");
    expect(c.state.alerts["mapLow"]).toMatchObject({ priority: "high", raisedAtSeq: 2, announcedAtSeq: 1 });
    raise("medium");
    expect(c.state.alerts["mapLow"]).toMatchObject({ priority: "medium", raisedAtSeq: 2, announcedAtSeq: 1 });
    c.add({ type: "alert.cleared", alertId: "mapLow" });
    expect(c.state.alerts).toEqual({});
  });
  it("nothing of another patient stays when a case is opened", () => {
    const c = new CaseBuilder();
    c.say({ sbp: 120, dbp: 60 });
    c.patient({ ageA: 6, cause: "bleed", herniation: true });
    c.add({
      type: "case.opened",
      caseId: "c2",
      label: "kilo four seven",
      rehearsal: false,
      protocol: { name: "p", version: "1" },
    });
    const protocolMark = { name: "p", version: "1" };
    expect(c.state).toEqual({
      ...emptyCase,
      caseId: "c2",
      label: "kilo four seven",
      openedAtMs: 0,
      protocolMark,
      factCount: 1,
    });
  });
  it("the protocol that counts is the one that replaced the others last; nothing recorded is lost by it", () => {
    const c = new CaseBuilder();
    c.add({
      type: "case.opened",
      caseId: "c1",
      label: "kilo four seven",
      rehearsal: false,
      protocol: { name: "first", version: "1", hash: "aa" },
    });
    c.say({ hr: 90 });
    c.add({ type: "protocol.replaced", protocol: { name: "second", version: "2", hash: "bb", signedBy: "key" } });
    c.add({ type: "protocol.replaced", protocol: { name: "third", version: "3", hash: "cc" } });
    expect(c.state.protocolMark).toEqual({ name: "third", version: "3", hash: "cc" });
    expect(c.state.vitals.hr?.entry.value).toBe(90);
    expect(c.state.caseId).toBe("c1");
  });
  it("keeps the end of a stand-by", () => {
    const c = new CaseBuilder();
    c.add({ type: "standBy.started", untilMs: 60_000 });
    expect(c.state.standByUntilMs).toBe(60_000);
  });
});

it("adding a reading touches only its own cell, however long the history", () => {
  const c = new CaseBuilder();
  for (let i = 0; i < 10_000; i += 1) c.say({ hr: 80 + (i % 20) });
  const before = c.state;
  c.say({ hr: 91 });
  expect(c.state.vitals.hr?.earlier).toBe(before.vitals.hr);
  const [last] = c.say({ hr: 19 });
  const kept = c.state.vitals.hr?.earlier;
  c.strike(last ?? "");
  expect(c.state.vitals.hr).toBe(kept);
});
