import { sayAlert, sayBesideReading } from "../language/sentences/alert.ts";
import type { UsualUnits } from "../language/sentences/recordedValue.ts";
import { sayPhase } from "../language/sentences/course.ts";
import { sayPressureOffer } from "../language/sentences/pressureOffer.ts";
import { sayPrompt } from "../language/sentences/prompt.ts";
import { sentences } from "../language/sentences/sentence.ts";
import type { CaseState } from "../log/caseState.ts";
import type { NewFact } from "../log/facts.ts";
import type { TalkLevel } from "../log/talkFacts.ts";
import { selectPhase } from "../log/phase.ts";
import type { Protocol } from "../protocol/protocol.ts";
import { isWorse } from "../protocol/priority.ts";
import type { AlertDue } from "../rules/alerts/alertsDue.ts";
import { NEURO_SIGN } from "../rules/alerts/otherConditions.ts";
import { pressureOffer, type Course } from "../rules/pressureOffer.ts";
import { promptsStanding, type PromptDue } from "../rules/promptsDue.ts";
import type { Prompt } from "../rules/prompts/prompt.ts";
import type { Announcement } from "./announcement.ts";
import { askToGoOn } from "./decide/care/course/decideRescue.ts";

/** Words to be queued, and the facts that say that they were. */
export type Spoken = { readonly announcement: Announcement | undefined; readonly facts: readonly NewFact[] };

const OFFER = "pressureOffer";
/** The voice queue tells by this name which waiting words are overtaken. */
const nameOf = (promptId: string): string => `prompt:${promptId}`;

/** "Out. Oxygenate." says what the alert of that value would: only one of the two is spoken. */
const isSpokenFor = ({ cause }: AlertDue, prompts: readonly Prompt[]): boolean =>
  cause === "oxygen" && prompts.some(({ promptId }) => promptId === "stopAttempt");

/** Reminders that were said in one breath. */
const REMINDER = "reminder";

/** What the words of an alert are of. */
const aboutOf = ({ body }: AlertDue): readonly string[] => ("code" in body ? [body.code] : []);

type Reason = { readonly prompts: readonly Prompt[]; readonly isAsked: boolean; readonly usual: UsualUnits };

/**
 * How an alert is heard: by its words, by its tone alone, through other words of this turn, or by its tone before a question
 * that says it.
 */
function voiceOf(alert: AlertDue, { prompts, isAsked }: Reason): "spoken" | "tone" | "through" | "asked" {
  if (isSpokenFor(alert, prompts)) return "through";
  return alert.alertId === NEURO_SIGN && isAsked ? "asked" : alert.voice;
}

/** The facts of an announcement: one for each alert that it is for, with the words at the one that speaks. */
const announced = (alert: AlertDue, text: string, isSpoken: boolean): readonly NewFact[] =>
  alert.covers.map(({ alertId, priority, value }) => {
    const speaks = isSpoken && alertId === alert.alertId;
    const ofDevice = alert.cause === "device" && { ofDevice: true as const };
    return {
      type: "alert.announced",
      alertId,
      priority,
      value,
      text,
      ...(speaks ? {} : { unspoken: true as const }),
      ...ofDevice,
    };
  });

/**
 * The words of the alerts that are due, with their facts. Reminders are said in one breath.
 *
 * @returns `toned`: words of those past the cap, for the reply to the statement that raised them.
 */
export function speakAlerts(
  due: readonly AlertDue[],
  reason: Reason,
): { readonly spoken: readonly Spoken[]; readonly toned: readonly string[] } {
  const spoken: Spoken[] = [];
  const toned: string[] = [];
  const reminders = due.filter((alert) => alert.reason === "again" && voiceOf(alert, reason) === "spoken");
  const [first, ...others] = reminders;
  for (const alert of due) {
    if (others.includes(alert)) continue;
    const voice = voiceOf(alert, reason);
    const breath = alert === first ? reminders : [alert];
    const text = sentences(...breath.map((each) => sayAlert(each, reason.usual)));
    const facts = [
      ...announced(alert, text, voice === "spoken"),
      ...(alert === first ? others.flatMap((other) => announced(other, text, false)) : []),
    ];
    if (voice === "tone") toned.push(sayBesideReading(alert, reason.usual));
    const { priority } = breath.reduce((worst, each) => (isWorse(each.priority, worst.priority) ? each : worst), alert);
    const announcement: Announcement | undefined =
      voice === "through"
        ? undefined
        : {
            text: voice === "spoken" ? text : "",
            priority,
            alertId: breath.length > 1 ? REMINDER : alert.alertId,
            about: breath.flatMap(aboutOf),
            ...(breath.some(({ louder }) => louder) && { louder: true }),
          };
    spoken.push({ announcement, facts });
  }
  return { spoken, toned };
}

/** What waits to be said of alerts that are gone is dropped; so are words that were for several, if one of them is. */
export const withdrawnOf = (cleared: readonly string[]): readonly string[] =>
  cleared.length === 0 ? [] : [...cleared, REMINDER];

/** The words of a prompt with its facts; the question that it puts, where it puts one. */
export function speakPrompt(log: CaseState, { region }: Protocol, prompt: PromptDue, nowMs: number): Spoken {
  const { promptId, key, priority, callOut, voice } = prompt;
  const isTone = voice === "tone";
  const text = sayPrompt(prompt, region);
  const said: NewFact = {
    type: "prompt.announced",
    promptId,
    key,
    text,
    ...(callOut && { callOut }),
    ...(isTone && { unspoken: true as const }),
  };
  const asked = prompt.asks === true ? [askToGoOn(log, text, nowMs)] : [];
  return { announcement: { text: isTone ? "" : text, priority, alertId: nameOf(promptId) }, facts: [...asked, said] };
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
  return [{ announcement, facts: [{ type: "prompt.announced", promptId: OFFER, key, text, callOut: true }] }];
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

/** Besides alerts and prompts: what is left out when less is to be said. */
const PHASE = "phase";
const SPARED: readonly (string | undefined)[] = [PHASE, nameOf(OFFER)];

/** Whether this is said at this talk level. What is due by the rules knows the level itself. */
export const isSaidAt = (level: TalkLevel, { alertId }: Announcement): boolean =>
  level === "full" || !SPARED.includes(alertId);

/** A phase that a fact brought about, or took back, in two words; said after everything else, and only the newest. */
export function speakPhase(before: CaseState, after: CaseState, calledAloud: boolean): readonly Announcement[] {
  const phase = selectPhase(after);
  if (calledAloud || phase === selectPhase(before)) return [];
  return [{ text: sentences(sayPhase(phase)), priority: "none", alertId: PHASE }];
}
