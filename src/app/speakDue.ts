import { sayAlert } from "../language/sentences/alert.ts";
import { sayPhase } from "../language/sentences/course.ts";
import { sayPressureOffer } from "../language/sentences/pressureOffer.ts";
import { sayPrompt } from "../language/sentences/prompt.ts";
import { sentences } from "../language/sentences/sentence.ts";
import type { CaseState } from "../log/caseState.ts";
import type { NewFact } from "../log/facts.ts";
import { selectPhase } from "../log/phase.ts";
import type { Protocol } from "../protocol/protocol.ts";
import type { AlertDue } from "../rules/alertsDue.ts";
import { pressureOffer, type Course } from "../rules/pressureOffer.ts";
import { promptsStanding } from "../rules/promptsDue.ts";
import type { Prompt } from "../rules/prompts/prompt.ts";
import type { Announcement } from "./announcement.ts";
import { askToGoOn } from "./decide/care/course/decideRescue.ts";

/** Words to be queued, and the facts that say that they were. */
export type Spoken = { readonly announcement: Announcement; readonly facts: readonly NewFact[] };

const OFFER = "pressureOffer";
/** The voice queue tells by this name which waiting words are overtaken. */
const nameOf = (promptId: string): string => `prompt:${promptId}`;

const isOfOxygen = ({ code }: AlertDue): boolean => code === "spo2";

/** "Out. Oxygenate." says what the alert of that value would: only one of the two is spoken. */
export const isSpokenFor = (alert: AlertDue, prompts: readonly Prompt[]): boolean =>
  isOfOxygen(alert) && prompts.some(({ promptId }) => promptId === "stopAttempt");

/** The words of an alert and its fact. */
export function speakAlert(
  alert: AlertDue,
  silent: boolean,
): { readonly announcement: Announcement | undefined; readonly fact: NewFact } {
  const text = sayAlert(alert);
  const { alertId, priority, value } = alert;
  const announcement = silent ? undefined : { text, priority, alertId };
  return { announcement, fact: { type: "alert.announced", alertId, priority, value, text } };
}

/** The words of a prompt with its facts; the question that it puts, where it puts one. */
export function speakPrompt(log: CaseState, { region }: Protocol, prompt: Prompt, nowMs: number): Spoken {
  const { promptId, key, priority } = prompt;
  const text = sayPrompt(prompt, region);
  const said: NewFact = { type: "prompt.announced", promptId, key, text };
  const asked = prompt.asks === true ? [askToGoOn(log, text, nowMs)] : [];
  return { announcement: { text, priority, alertId: nameOf(promptId) }, facts: [...asked, said] };
}

/** What lies ready against a pressure that has just fallen: said once, after the alert. */
export function speakOffer(
  course: Course,
  protocol: Protocol,
  announced: readonly AlertDue[],
  nowMs: number,
): readonly Spoken[] {
  const offer = pressureOffer(course, protocol, announced, nowMs);
  if (offer === undefined) return [];
  const text = sayPressureOffer(offer);
  const key = String(course.after.factCount);
  const announcement = { text, priority: "low", alertId: nameOf(OFFER) } as const;
  return [{ announcement, facts: [{ type: "prompt.announced", promptId: OFFER, key, text }] }];
}

/** Prompts that the facts of this turn have answered: what waits to be said of them is dropped. */
export function promptsAnswered(
  before: CaseState,
  after: CaseState,
  protocol: Protocol,
  nowMs: number,
): readonly string[] {
  const idsOf = (log: CaseState) => promptsStanding(log, protocol, nowMs).map(({ promptId }) => promptId);
  const standing = idsOf(after);
  const gone = idsOf(before).filter((id) => !standing.includes(id));
  const offerGone = Object.keys(before.alerts).length > 0 && Object.keys(after.alerts).length === 0;
  return [...gone.map(nameOf), ...(offerGone ? [nameOf(OFFER)] : [])];
}

/** A phase that a fact brought about, or took back, in two words; said after everything else, and only the newest. */
export function speakPhase(before: CaseState, after: CaseState, calledAloud: boolean): readonly Announcement[] {
  const phase = selectPhase(after);
  if (calledAloud || phase === selectPhase(before)) return [];
  return [{ text: sentences(sayPhase(phase)), priority: "none", alertId: "phase" }];
}
