import { rank, type Severity } from "./limits.ts";

/** From the moment a value counts to the alert that stands and is told. */
export const BUDGET_MS = 1000;

export type Finding = { readonly alertId: string; readonly atMs: number; readonly why: string };
/** One time that a value came into a band, or into a worse one. */
export type Crossing = {
  readonly alertId: string;
  readonly code: string;
  readonly severity: Severity;
  readonly atMs: number;
  readonly value: number;
};

/** Values that tell of the same thing: words about one of them are words about all that cross with it. */
const groupOf = (code: string): string => (["map", "sbp", "cpp", "cppBound"].includes(code) ? "pressure" : code);

const SPOKEN_NAMES: Readonly<Record<string, string>> = {
  map: "MAP",
  cpp: "CPP",
  cppBound: "CPP",
  sbp: "systolic",
  spo2: "sats",
  etco2: "end tidal",
  hr: "heart rate",
  temp: "temperature",
  glucose: "glucose",
  icp: "ICP",
};

/** "MAP seventy three, seventeen under ninety": the read-back itself gives the number against its target. */
function isToldInReply(reply: string, code: string): boolean {
  const said = String.raw`${SPOKEN_NAMES[code] ?? code} [a-z ]+, (?:(?!pressure)[a-z ])+ (?:under|over) `;
  return new RegExp(said, "iu").test(reply);
}

type Owed = Crossing & {
  readonly tellByMs: number;
  stoodAtMs: number | undefined;
  toldAtMs: number | undefined;
};

/** What the tool owes: each crossing has to stand, and to be told in words or by a tone, within the budget. */
export class Obligations {
  readonly missed: Finding[] = [];
  readonly late: Finding[] = [];
  #open: Owed[] = [];

  /** @param quietUntilMs until then somebody asked for quiet, which holds for all but what is high. */
  owe(crossing: Crossing, reply: string, quietUntilMs: number): void {
    const { atMs, severity, code } = crossing;
    const fromMs = severity === "high" ? atMs : Math.max(atMs, quietUntilMs);
    const toldAtMs = isToldInReply(reply, code) ? atMs : undefined;
    this.#open.push({ ...crossing, tellByMs: fromMs + BUDGET_MS, stoodAtMs: undefined, toldAtMs });
  }

  stands(standing: ReadonlyMap<string, Severity>, atMs: number): void {
    for (const owed of this.#open) if (rank(standing.get(owed.alertId)) >= rank(owed.severity)) owed.stoodAtMs ??= atMs;
  }

  /** An alert was announced, spoken or not. */
  told(code: string, priority: Severity, atMs: number): void {
    for (const owed of this.#open)
      if (groupOf(owed.code) === groupOf(code) && rank(priority) >= rank(owed.severity)) owed.toldAtMs ??= atMs;
  }

  /** Closes what was met, and what is over since the values are better again. */
  settle(severities: ReadonlyMap<string, Severity>, atMs: number): void {
    this.#open = this.#open.filter((owed) => {
      const isMet = owed.stoodAtMs !== undefined && owed.toldAtMs !== undefined;
      const isOver = rank(severities.get(owed.alertId)) < rank(owed.severity);
      if (isMet) this.#close(owed);
      else if (isOver && atMs > owed.tellByMs) this.#miss(owed);
      return !isMet && !isOver;
    });
  }

  end(atMs: number): void {
    for (const owed of this.#open) if (atMs > owed.tellByMs) this.#miss(owed);
  }

  #close(owed: Owed): void {
    const { stoodAtMs = Infinity, toldAtMs = Infinity, tellByMs, atMs, alertId } = owed;
    if (stoodAtMs <= atMs + BUDGET_MS && toldAtMs <= tellByMs) return;
    const seconds = Math.round((Math.max(stoodAtMs, toldAtMs) - atMs) / 1000);
    this.late.push({ alertId, atMs, why: `${describe(owed)}: after ${seconds} s` });
  }

  #miss(owed: Owed): void {
    const why = owed.stoodAtMs === undefined ? "never stood" : "never told";
    this.missed.push({ alertId: owed.alertId, atMs: owed.atMs, why: `${describe(owed)}: ${why}` });
  }
}

const describe = ({ severity, value }: Crossing): string => `${severity} at ${value.toFixed(1)}`;
