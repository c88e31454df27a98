import type { Fact } from "../../../src/log/facts.ts";

/** Starts the clock that must be right after every kill. */
export const CLOCK_LINE = "oxygen running";
export const CLOCK_LABEL = "Preoxygenation";

const DIGITS = ["zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine"];
const spell = (value: number): string => [...String(value)].map((digit) => DIGITS[Number(digit)]).join(" ");

type Reading = { readonly sbp: number; readonly dbp: number; readonly hr: number; readonly spo2: number };

/** No two of the first 9,000 lines are alike, and none is far from the one before it, which would be asked back. Invented. */
const readingOf = (line: number): Reading => ({
  sbp: 110 + (line % 23),
  dbp: 60 + (line % 17),
  hr: 80 + (line % 13),
  spo2: 95 + (line % 2),
});

/** The line as it is typed. */
export function typedOf(line: number): string {
  const { sbp, dbp, hr, spo2 } = readingOf(line);
  return `${sbp}/${dbp}, rate ${hr}, sats ${spo2}`;
}

/** The line as the page shows and records what it heard. */
function heardOf(line: number): string {
  const { sbp, dbp, hr, spo2 } = readingOf(line);
  return `${spell(sbp)} over ${spell(dbp)} rate ${spell(hr)} sats ${spell(spo2)}`;
}

/** What is wrong with the record of a page, given the lines that were typed into it. */
export function judgeRecord(facts: readonly Fact[], typed: number, acknowledged: readonly string[]): readonly string[] {
  if (facts.length === 0) return acknowledged.length === 0 ? [] : ["lost: everything"];
  const caseId = facts[0]?.type === "case.opened" ? facts[0].caseId : "";
  const misplaced = facts.flatMap(({ id }, n) => (id === `${caseId}-${n}` ? [] : [`order: ${id} at ${n}`]));
  const found: number[] = [];
  const torn: string[] = [];
  const lines = new Map(Array.from({ length: typed }, (_, line) => [heardOf(line), line]));
  const vitals = facts.flatMap((fact) => (fact.type === "vital.recorded" ? [fact] : []));
  for (const readingId of new Set(vitals.map((fact) => fact.readingId))) {
    const reading = vitals.filter((fact) => fact.readingId === readingId);
    const line = lines.get(reading[0]?.heard ?? "");
    if (line === undefined) {
      torn.push(`altered: ${reading[0]?.heard}`);
      continue;
    }
    found.push(line);
    const values = Object.fromEntries(reading.map(({ code, value }) => [code, value]));
    const whole = readingOf(line);
    const isWhole = reading.length === 4 && Object.entries(whole).every(([code, value]) => values[code] === value);
    if (!isWhole) torn.push(`torn: line ${line} is ${JSON.stringify(values)}`);
  }
  const heard = new Set(facts.flatMap((fact) => ("heard" in fact ? [fact.heard] : [])));
  const lost = acknowledged.filter((words) => !heard.has(words)).map((words) => `lost: ${words}`);
  const disorder = found.flatMap((line, i) => (line > (found[i - 1] ?? -1) ? [] : [`order: line ${line}`]));
  return [...misplaced, ...torn, ...lost, ...disorder];
}
