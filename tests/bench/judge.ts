import { grammarState, type AppContext, type AppState } from "../../src/app/context.ts";
import { decide } from "../../src/app/decide/decide.ts";
import type { Interpretation } from "../../src/app/interpret.ts";
import { withoutExactAge } from "../../src/app/withoutExactAge.ts";
import type { Intent } from "../../src/language/intent.ts";
import { normalise } from "../../src/language/normalise/normalise.ts";
import { meaningKey } from "../../src/language/understand/meaningKey.ts";
import { understand } from "../../src/language/understand/understand.ts";
import type { Act, Fact, NewFact, Question, Statement, StrikeAct } from "../../src/log/facts.ts";

/**
 * right: recorded or carried out as said. askedRight: asked back, and the right value is among those offered.
 * askedWrong: asked back, but only other values are offered. refused: "say again". silent: nothing happened.
 * wrong: something was recorded or carried out that was not said, or only a part of what was.
 */
export const OUTCOMES = ["right", "askedRight", "askedWrong", "refused", "silent", "wrong"] as const;
export type Outcome = (typeof OUTCOMES)[number];

/** What should follow from words, as the app itself makes it of the same words typed. */
export type Truth = {
  readonly keys: ReadonlySet<string>;
  readonly entries: ReadonlySet<string>;
  readonly isAsked: boolean;
  /** Meanings of words that were heard with a doubt and are asked back as they were heard. */
  readonly keysOf: (words: string) => readonly string[];
};

/** Of sounds that say nothing: whatever is recorded is wrong. */
export const NOTHING_TRUE: Truth = { keys: new Set(), entries: new Set(), isAsked: false, keysOf: () => [] };

/** A fact of care without its stamp and the words that led to it: the same amount is the same fact however it was said. */
const STAMP: readonly string[] = ["v", "id", "atMs", "heard", "by", "certainty", "confirmation"];
const careEntry = (fact: NewFact | Fact): string =>
  JSON.stringify(fact, (key, part: unknown) => (STAMP.includes(key) ? undefined : part));

const entriesOf = ({ vitals, findings, sex, cause, herniation }: Statement): readonly string[] => [
  ...vitals.map((v) =>
    [v.code, Math.round(v.value * 100) / 100, v.method ?? "", v.site ?? "", v.level ?? "", v.reaction ?? ""].join(" "),
  ),
  ...findings.map((f) => `${f.code} ${f.finding}`),
  ...(sex === undefined ? [] : [`sex ${sex}`]),
  ...(cause === undefined ? [] : [`cause ${cause}`]),
  ...(herniation === undefined ? [] : [`herniation ${herniation}`]),
];

const CARE: readonly NewFact["type"][] = [
  "phase.entered",
  "airway.event",
  "clock.started",
  "clock.stopped",
  "cylinder.recorded",
  "strength.affirmed",
  "drug.given",
  "infusion.set",
  "fluid.given",
  "rescue.started",
  "rescue.ended",
];

const recordedEntries = (facts: readonly NewFact[]): readonly string[] =>
  facts.flatMap((fact) => {
    if (fact.type === "vital.recorded") return entriesOf({ vitals: [fact], findings: [] });
    if (fact.type === "finding.recorded") return entriesOf({ vitals: [], findings: [fact] });
    if (fact.type === "sex.recorded") return [`sex ${fact.sex}`];
    if (fact.type === "cause.recorded") return [`cause ${fact.cause}`];
    if (fact.type === "herniation.recorded") return [`herniation ${fact.present}`];
    if (fact.type === "step.answered") return [`step ${fact.stepId} ${fact.answer}`];
    if (fact.type === "entry.struck") return ["struck"];
    return CARE.includes(fact.type) ? [careEntry(fact)] : [];
  });

const strikeEntry = ({ targetIds, becomes }: StrikeAct): string =>
  ["strike", ...targetIds, ...becomes.map(({ code, value }) => `${code} ${value}`)].join(" ");

const questionsOf = (facts: readonly NewFact[]): readonly Question[] =>
  facts.flatMap((fact) => (fact.type === "question.asked" ? [fact.question] : []));

export function truthOf(context: AppContext, state: AppState, words: string, nowMs: number): Truth {
  const grammar = context.grammars.of(grammarState(context.protocol, state.log));
  const intentsOf = (said: string): readonly Intent[] => {
    const meaning = understand(grammar, normalise(said));
    return meaning.kind === "many" ? meaning.intents : meaning.kind === "one" ? [meaning.intent] : [];
  };
  const intents = intentsOf(words);
  const decisions = intents.map((intent) =>
    decide(context, state, withoutExactAge({ kind: "meant", words, intent }, state.log), "listener", nowMs),
  );
  const isAsked = intents.length > 1 || decisions.some((d) => questionsOf(d.facts).length > 0);
  const entries = decisions.flatMap(({ facts }) => [
    ...recordedEntries(facts),
    ...questionsOf(facts).flatMap((q) => {
      // In doubt between sound-alikes the first is the one that was said; of units, either may have been meant.
      const meant = q.reason === "unit" ? q.candidates : q.candidates.slice(0, 1);
      return [
        ...meant.flatMap((c) => entriesOf(c.statement)),
        ...(q.acts ?? []).flatMap((act) =>
          act.kind === "record" ? act.facts.map(careEntry) : act.kind === "strike" ? [strikeEntry(act)] : [],
        ),
      ];
    }),
  ]);
  const keysOf = (said: string) => intentsOf(said).map(meaningKey);
  return { keys: new Set(intents.map(meaningKey)), entries: new Set(entries), isAsked, keysOf };
}

const isSaid = (truth: Truth, act: Act): boolean => {
  switch (act.kind) {
    case "dose":
      return truth.keys.has(meaningKey(act));
    case "step":
      return truth.entries.has(`step ${act.stepId} ${act.answer}`);
    case "words":
      return truth.keysOf(act.words).some((key) => truth.keys.has(key));
    case "record":
      return act.facts.every((fact) => truth.entries.has(careEntry(fact)));
    case "newCase":
      return truth.keys.has(meaningKey(act));
    case "strike":
      return truth.entries.has(strikeEntry(act));
    case "disregard":
    case "standBy":
      return truth.keys.has(meaningKey({ kind: "command", command: act.kind }));
  }
};

const offers = ({ candidates, acts = [] }: Question, truth: Truth): boolean =>
  candidates.some(({ statement }) => entriesOf(statement).every((entry) => truth.entries.has(entry))) ||
  acts.some((act) => isSaid(truth, act));

/** Judges one utterance that was acted upon or not; pure. */
export function judge(truth: Truth, heard: Interpretation, facts: readonly NewFact[], outcome: string): Outcome {
  const recorded = recordedEntries(facts);
  const allTrue = recorded.every((entry) => truth.entries.has(entry));
  if (!allTrue) return "wrong";
  const questions = questionsOf(facts);
  if (questions.length > 0) {
    // Where a rule asks about what was said, and that is what was heard, the question is the right one whatever it offers.
    const isRule = truth.isAsked && heard.kind === "meant" && truth.keys.has(meaningKey(heard.intent));
    return isRule || questions.every((q) => offers(q, truth)) ? "askedRight" : "askedWrong";
  }
  if (outcome === "refused") return "refused";
  if (outcome === "ignored") return "silent";
  const best = heard.kind === "meant" ? heard.intent : heard.kind === "unsure" ? heard.intents[0] : undefined;
  const isWhole = heard.kind === "meant" || recorded.length === 0;
  if (isWhole && best !== undefined && truth.keys.has(meaningKey(best))) return "right";
  // It found no such entry, and said so.
  if (best?.kind === "strike") return "refused";
  return recorded.length > 0 && recorded.length === truth.entries.size ? "right" : "wrong";
}

/** Of several the worst counts; what came to nothing beside something else, as a snatch of the crowd before it, does not. */
export function worstOf(outcomes: readonly Outcome[]): Outcome {
  const some = outcomes.filter((outcome) => outcome !== "silent");
  return some.sort((a, b) => OUTCOMES.indexOf(b) - OUTCOMES.indexOf(a))[0] ?? "silent";
}
