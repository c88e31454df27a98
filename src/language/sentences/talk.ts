import { STEPS_EACH_WAY, type TalkLevel, type VoiceSteps } from "../../log/talkFacts.ts";
import type { AlertCause } from "../../rules/alerts/cause.ts";
import { sayLength } from "./clock.ts";
import { sentences } from "./sentence.ts";

const CAUSE_NAMES: Readonly<Record<AlertCause, string>> = {
  pressure: "pressure",
  oxygen: "sats",
  co2: "CO2",
  heartRate: "heart rate",
  temperature: "temperature",
  glucose: "glucose",
  icp: "ICP",
  brain: "brain",
  airway: "airway",
  drugs: "drugs",
  supplies: "supplies",
  checks: "checks",
  device: "device",
};

/** What an alert is about, in a word or two. */
export const sayCause = (cause: AlertCause): string => CAUSE_NAMES[cause];

/** "Pressure acknowledged. Sats not yet." */
export const sayAcknowledged = (what: string, next: string | undefined): string =>
  sentences(`${what} acknowledged`, next && `${next} not yet`);

/** Nothing of this was said, or all of it is acknowledged. */
export const sayNothingToAcknowledge = (what: string | undefined, next: string | undefined): string =>
  sentences(what === undefined ? "No alert to acknowledge" : `No ${what} alert`, next && `${next} not yet`);

export const sayPaused = (forMs: number): string =>
  sentences(`Alerts paused, ${sayLength(forMs)}`, "High ones still come");

export const refusePause = (mostMs: number): string => sentences(`${sayLength(mostMs)} at most`);

export const sayAlertsOn = (wereHeld: boolean): string => (wereHeld ? "Alerts on." : "Alerts are on.");

/** What is no longer said is named: silence must not be taken for not being heard. */
export const sayLevel = (level: TalkLevel): string =>
  ({
    full: "Full talk.",
    brief: "Brief talk. What is on target is not said.",
    alerts: "Alerts only. Readings are not said back.",
  })[level];

const WAYS = {
  volume: { up: "louder", down: "quieter", most: "loudest", least: "quietest" },
  pace: { up: "faster", down: "slower", most: "fastest", least: "slowest" },
} as const;

/** Where the voice stands between its ends, in a word: "louder", "loudest"; none where it is as usual. */
export function voiceWord(what: keyof VoiceSteps, steps: number): string | undefined {
  if (steps === 0) return undefined;
  const isAtEnd = Math.abs(steps) >= STEPS_EACH_WAY;
  const { up, down, most, least } = WAYS[what];
  return steps > 0 ? (isAtEnd ? most : up) : isAtEnd ? least : down;
}

/**
 * A step of the voice, in the new manner: "Voice louder.", "Voice loudest." at the end of the range, "Loudest already."
 * beyond it. Never the command alone: heard by ourselves it would be another step.
 *
 * @param step      1 or -1.
 * @param isAtEnd   there is no further step.
 * @param hasMoved  false: it was at the end before.
 */
export function sayVoiceStep(what: keyof VoiceSteps, step: number, isAtEnd: boolean, hasMoved: boolean): string {
  const way = WAYS[what];
  const end = step > 0 ? way.most : way.least;
  if (!hasMoved) return sentences(`${end} already`);
  return sentences(`voice ${isAtEnd ? end : step > 0 ? way.up : way.down}`);
}

export const USUAL_VOICE = "Usual voice.";
