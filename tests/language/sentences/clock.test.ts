import { describe, expect, it } from "vitest";
import { sayClocks, sayLength, showClocks, showLength } from "../../../src/language/sentences/clock.ts";
import type { Clock } from "../../../src/rules/clock.ts";

describe("lengths of time", () => {
  it.each([
    [0, "zero seconds", "0:00"],
    [-5000, "zero seconds", "0:00"],
    [32_000, "thirty seconds", "0:32"],
    [33_000, "thirty five seconds", "0:33"],
    [58_000, "one minute", "0:58"],
    [75_000, "one minute fifteen", "1:15"],
    [120_000, "two minutes", "2:00"],
    [599_000, "ten minutes", "9:59"],
    [630_000, "eleven minutes", "10:30"],
    [3_600_000, "one hour", "1 h 0 min"],
    [4_200_000, "one hour ten", "1 h 10 min"],
    [7_260_000, "two hours one", "2 h 1 min"],
  ])("%d ms", (ms, said, shown) => {
    expect(sayLength(ms)).toBe(said);
    expect(showLength(ms)).toBe(shown);
  });
});

describe("clocks, said and shown", () => {
  const clocks: readonly Clock[] = [
    { id: "preoxygenation", startedAtMs: 0, endsAtMs: 180_000 },
    { id: "attempt", startedAtMs: 60_000, subject: "2" },
    { id: "rescue", startedAtMs: 0, endsAtMs: 1_200_000 },
    { id: "pressureDue", startedAtMs: 0, endsAtMs: 60_000 },
    { id: "pushDose", startedAtMs: 90_000, endsAtMs: 150_000, subject: "phenylephrine" },
    { id: "sedationDue", startedAtMs: 0, endsAtMs: 300_000, subject: "rocuronium" },
  ];

  it("says how long what counts up has run, and of the others when they are due", () => {
    expect(sayClocks(clocks, 120_000)).toBe(
      "Preoxygenation two minutes. Attempt two one minute. Rescue eighteen minutes left. Pressure due. Phenylephrine again in thirty seconds. Sedation due in three minutes.",
    );
    expect(sayClocks([], 120_000)).toBe("No clock runs.");
  });

  it("leaves out a push dose whose interval has passed", () => {
    expect(sayClocks(clocks.slice(4, 5), 150_000)).toBe("No clock runs.");
  });

  it("shows the same, and marks what is over", () => {
    expect(showClocks(clocks.slice(0, 4), 120_000)).toEqual([
      { label: "Preoxygenation", text: "2:00", over: false, countsUp: true },
      { label: "Attempt 2", text: "1:00", over: false, countsUp: true },
      { label: "Rescue", text: "18:00 left", over: false, countsUp: false },
      { label: "Pressure", text: "due", over: true, countsUp: false },
    ]);
  });

  // "due" would ask for what has to end.
  it.each([
    ["hyperventilation", undefined, "Hyperventilation", "time is up"],
    ["rescue", undefined, "Rescue", "time is up"],
    ["osmotic", "mannitol", "Mannitol", "ended"],
    ["bag", "noradrenaline", "Noradrenaline", "empty"],
    ["cylinder", undefined, "Oxygen cylinder", "at its reserve"],
    ["neuroDue", undefined, "Neuro check", "due"],
  ] as const)("shows what %s is when it is over, in the words that are said", (id, subject, label, text) => {
    const clock: Clock = { id, startedAtMs: 0, endsAtMs: 60_000, ...(subject === undefined ? {} : { subject }) };
    expect(showClocks([clock], 60_000)).toEqual([{ label, text, over: true, countsUp: false }]);
    expect(sayClocks([clock], 60_000).toLowerCase()).toBe(`${label} ${text}.`.toLowerCase());
  });
});
