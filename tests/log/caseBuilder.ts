import { VITALS, type VitalCode } from "../../src/core/vitals.ts";
import { emptyCase, type CaseState } from "../../src/log/caseState.ts";
import type { Fact, FindingValue, Method, NewFact, Question, Statement, StepAnswer } from "../../src/log/facts.ts";
import { reduceFact } from "../../src/log/reduceFact.ts";

/** Writes facts as the app does, with ids and a clock of its own, and keeps the state that follows from them. */
export class CaseBuilder {
  readonly facts: Fact[] = [];
  state: CaseState = emptyCase;
  nowMs = 0;

  /** Sets the clock, in seconds. */
  at(seconds: number): this {
    this.nowMs = seconds * 1000;
    return this;
  }

  add(...facts: readonly NewFact[]): readonly string[] {
    return facts.map((newFact) => {
      const fact: Fact = { ...newFact, v: 2, id: `f${this.facts.length}`, atMs: this.nowMs };
      this.facts.push(fact);
      this.state = reduceFact(this.state, fact);
      return fact.id;
    });
  }

  /** Values said in one breath. Returns their fact ids. */
  say(values: Partial<Record<VitalCode, number>>, method?: Method): readonly string[] {
    const heard = this.heard();
    return this.add(
      ...(Object.keys(values) as VitalCode[]).map((code): NewFact => {
        const value = values[code] ?? Number.NaN;
        const said = { value, unit: "mmHg" as const, words: String(value) };
        const how = method === undefined ? {} : { method };
        return { type: "vital.recorded", ...heard, code, value, unit: VITALS[code].unit, said, ...how };
      }),
    );
  }

  find(finding: FindingValue): readonly string[] {
    return this.add({ type: "finding.recorded", ...this.heard(), ...finding });
  }

  /** What is said of the patient in one breath: age in years, cause, herniation. */
  patient({
    ageA,
    cause,
    herniation,
  }: { readonly ageA?: number } & Pick<Statement, "cause" | "herniation">): readonly string[] {
    const heard = this.heard();
    return [
      ...(ageA === undefined ? [] : this.say({ age: ageA })),
      ...(cause === undefined ? [] : this.add({ type: "cause.recorded", cause, ...heard })),
      ...(herniation === undefined ? [] : this.add({ type: "herniation.recorded", present: herniation, ...heard })),
    ];
  }

  strike(...targetIds: readonly string[]): void {
    this.add({ type: "entry.struck", targetIds, reason: "disregarded" });
  }

  answer(stepId: string, answer: StepAnswer): readonly string[] {
    return this.add({ type: "step.answered", stepId, answer, heard: answer, by: "typed" });
  }

  ask(id: string): void {
    const question: Question = {
      id,
      reason: "sound-alike",
      about: ["icp"],
      prompt: "One five or five zero?",
      heard: "icp fifteen",
      by: "typed",
      askedAtMs: this.nowMs,
      strikes: [],
      candidates: [],
    };
    this.add({ type: "question.asked", question });
  }

  private heard() {
    return { readingId: `r${this.facts.length}`, heard: "as said", by: "typed" as const };
  }
}
