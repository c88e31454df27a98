import type { Clock, ClockId } from "../../rules/clock.ts";
import { isOver, leftOf, runFor } from "../../rules/clock.ts";
import { sayNumber, showNumber } from "./number.ts";
import { sentences } from "./sentence.ts";

/** Finer than this nobody hears. */
const STEP_S = 5;
/** From here on whole minutes are enough. */
const WHOLE_MINUTES_FROM_S = 600;

const whole = (n: number): string => sayNumber(n, 0);
const unit = (n: number, one: string, many: string): string => `${whole(n)} ${n === 1 ? one : many}`;

/** Whole seconds as they are said: to the nearest five under ten minutes, then to the nearest minute. */
function roundedS(lengthMs: number): number {
  const lengthS = Math.max(0, lengthMs) / 1000;
  const stepS = lengthS < WHOLE_MINUTES_FROM_S ? STEP_S : 60;
  return stepS * Math.round(lengthS / stepS);
}

/** A length of time aloud: "forty seconds", "two minutes", "one minute fifteen", "one hour ten". */
export function sayLength(lengthMs: number): string {
  const seconds = roundedS(lengthMs);
  const minutes = Math.floor(seconds / 60);
  if (minutes === 0) return `${whole(seconds)} seconds`;
  const hours = Math.floor(minutes / 60);
  const [big, rest] =
    hours > 0 ? [unit(hours, "hour", "hours"), minutes % 60] : [unit(minutes, "minute", "minutes"), seconds % 60];
  return rest === 0 ? big : `${big} ${whole(rest)}`;
}

/** A length as printed: "0:40", "12:05"; from an hour on in whole minutes, rounded down: "8 h 19 min". */
export function showLength(lengthMs: number): string {
  const seconds = Math.floor(Math.max(0, lengthMs) / 1000);
  const minutes = Math.floor(seconds / 60);
  if (minutes >= 60) return `${showNumber(Math.floor(minutes / 60), 0)} h ${minutes % 60} min`;
  return `${minutes}:${String(seconds % 60).padStart(2, "0")}`;
}

/** A length in a printed line, rounded down: "40 s", "4 min 20 s", "2 min", "8 h 19 min". Not for: a clock, see `showLength`. */
export function showSpan(lengthMs: number): string {
  const seconds = Math.floor(Math.max(0, lengthMs) / 1000);
  const minutes = Math.floor(seconds / 60);
  if (minutes === 0) return `${seconds} s`;
  const [big, rest] =
    minutes >= 60
      ? [`${showNumber(Math.floor(minutes / 60), 0)} h`, `${minutes % 60} min`]
      : [`${minutes} min`, `${seconds % 60} s`];
  return rest.startsWith("0 ") ? big : `${big} ${rest}`;
}

const NAMES: Readonly<Record<ClockId, string>> = {
  preoxygenation: "preoxygenation",
  apnoea: "apnoea",
  attempt: "attempt",
  tubeToCo2: "tube without CO2 value",
  pressureDue: "pressure",
  pushDose: "push dose",
  sedationDue: "sedation",
  hyperventilation: "hyperventilation",
  rescue: "rescue",
  osmotic: "osmotic",
  bag: "infusion",
  cylinder: "oxygen cylinder",
  neuroDue: "neuro check",
  fullSetDue: "full set",
};

/** What counts up aloud; of the others it is said when they are due. */
const COUNTS_UP: readonly ClockId[] = ["preoxygenation", "apnoea", "attempt", "tubeToCo2"];

const nameOf = ({ id, subject }: Clock, number: (n: number) => string): string => {
  if (subject === undefined || id === "sedationDue") return NAMES[id];
  return id === "attempt" ? `${NAMES.attempt} ${number(Number(subject))}` : subject;
};

const wordsFor: Readonly<Partial<Record<ClockId, { readonly left: string; readonly over: string }>>> = {
  hyperventilation: { left: "left", over: "time is up" },
  rescue: { left: "left", over: "time is up" },
  osmotic: { left: "left", over: "ended" },
  bag: { left: "left", over: "empty" },
  cylinder: { left: "left", over: "at its reserve" },
};

function sayClock(clock: Clock, nowMs: number): string {
  const name = nameOf(clock, whole);
  if (COUNTS_UP.includes(clock.id)) return `${name} ${sayLength(runFor(clock, nowMs))}`;
  const left = leftOf(clock, nowMs) ?? 0;
  const words = wordsFor[clock.id];
  if (words !== undefined)
    return isOver(clock, nowMs) ? `${name} ${words.over}` : `${name} ${sayLength(left)} ${words.left}`;
  if (clock.id === "pushDose") return `${name} again in ${sayLength(left)}`;
  return isOver(clock, nowMs) ? `${name} due` : `${name} due in ${sayLength(left)}`;
}

/** Nothing is told by an interval between push doses that has passed: then the pressure decides. */
const isTold = (clock: Clock, nowMs: number): boolean => clock.id !== "pushDose" || !isOver(clock, nowMs);

/** What "clocks" answers: "Preoxygenation two minutes. Apnoea forty seconds." */
export function sayClocks(clocks: readonly Clock[], nowMs: number): string {
  const said = clocks.filter((clock) => isTold(clock, nowMs)).map((clock) => sayClock(clock, nowMs));
  return said.length === 0 ? "No clock runs." : sentences(...said);
}

/** A clock on the screen: its name, its length or what is left of it, whether it is over, and whether it counts up. */
export type ShownClock = {
  readonly label: string;
  readonly text: string;
  readonly over: boolean;
  readonly countsUp: boolean;
};

/** The clocks that run, for the screen. */
export function showClocks(clocks: readonly Clock[], nowMs: number): readonly ShownClock[] {
  return clocks
    .filter((clock) => isTold(clock, nowMs))
    .map((clock) => {
      const name = nameOf(clock, (n) => showNumber(n, 0));
      const label = name.charAt(0).toUpperCase() + name.slice(1);
      const over = isOver(clock, nowMs);
      const countsUp = COUNTS_UP.includes(clock.id);
      if (countsUp) return { label, text: showLength(runFor(clock, nowMs)), over, countsUp };
      const ended = wordsFor[clock.id]?.over ?? "due";
      return { label, text: over ? ended : `${showLength(leftOf(clock, nowMs) ?? 0)} left`, over, countsUp };
    });
}
