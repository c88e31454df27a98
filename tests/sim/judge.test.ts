import { beforeAll, describe, expect, it } from "vitest";
import type { Fact } from "../../src/log/facts.ts";
import { testContext } from "../app/playCase.ts";
import { judgeRun, mostWithin } from "./judge.ts";
import { playRun, type SimRun, type SimTurn } from "./playSim.ts";

const context = testContext();
const judge = (run: SimRun) => judgeRun(context.protocol, run);

/** Falls in steps, recovers, and once is said wrong. */
const LINES = new Map([
  [5, "thirty four year old man"],
  [20, "map ninety five"],
  [60, "map seventy"],
  [70, "disregard"],
  [130, "map eighty five"],
  [250, "map seventy two"],
  [370, "sats eighty eight"],
  [490, "map ninety six"],
  [500, "sats ninety seven"],
]);

type Engine = (turn: SimTurn) => readonly SimTurn[];
const spoil = (run: SimRun, engine: Engine): SimRun => ({
  ...run,
  turns: run.turns.flatMap(engine).sort((a, b) => a.atMs - b.atMs),
});
const without =
  (...types: readonly Fact["type"][]): Engine =>
  (turn) => [{ ...turn, reply: "", facts: turn.facts.filter(({ type }) => !types.includes(type)) }];
const isOfAlerts = ({ type }: Fact): boolean => type.startsWith("alert.");
const later =
  (ms: number): Engine =>
  (turn) => [
    { ...turn, reply: "", facts: turn.facts.filter((f) => !isOfAlerts(f)), announcements: [] },
    { ...turn, atMs: turn.atMs + ms, said: undefined, reply: "", facts: turn.facts.filter(isOfAlerts) },
  ];
const onlyOf =
  (alertId: string): Engine =>
  (turn) => [
    { ...turn, facts: turn.facts.filter((f) => !isOfAlerts(f) || (f as { alertId: string }).alertId === alertId) },
  ];

describe("the judge of the simulated clinician", () => {
  let run: SimRun;

  beforeAll(async () => {
    run = await playRun(context, { next: (nowS) => LINES.get(nowS), notice: () => undefined }, 600);
  });

  it("finds nothing where every crossing is told, and knows them all", () => {
    const { crossings, missed, late, notTakenBack, offScreen } = judge(run);
    expect([missed, late, notTakenBack, offScreen]).toEqual([[], [], [], []]);
    const seen = crossings.filter(({ alertId }) => ["mapLow", "spo2Low"].includes(alertId));
    expect(seen.map(({ alertId, severity, value }) => [alertId, severity, value])).toEqual([
      ["mapLow", "high", 70],
      ["mapLow", "medium", 85],
      ["mapLow", "high", 72],
      ["spo2Low", "high", 88],
    ]);
  });

  it("misses the words of an engine that drops them", () => {
    const { missed } = judge(spoil(run, without("alert.announced")));
    expect(missed.map(({ alertId }) => alertId)).toEqual(expect.arrayContaining(["mapLow", "spo2Low"]));
  });

  it("misses what an engine never raises", () => {
    expect(judge(spoil(run, without("alert.raised"))).missed.length).toBeGreaterThanOrEqual(3);
  });

  it("misses the alert of saturation where there are only those of pressure", () => {
    expect(judge(spoil(run, onlyOf("mapLow"))).missed.map(({ alertId }) => alertId)).toContain("spo2Low");
  });

  it("lets a second pass, and nothing longer", () => {
    expect(judge(spoil(run, later(1000))).late).toEqual([]);
    const late = judge(spoil(run, later(2000))).late;
    expect(late.map(({ alertId }) => alertId)).toEqual(expect.arrayContaining(["mapLow", "spo2Low"]));
  });

  it("sees an alert that outlives the value that it was for", () => {
    const { notTakenBack } = judge(spoil(run, without("alert.cleared")));
    expect(notTakenBack.map(({ alertId }) => alertId)).toContain("mapLow");
  });

  it("sees what the screen leaves out", () => {
    const blank = { ...run, shown: run.shown.map(({ atMs }) => ({ atMs, alertIds: [] })) };
    expect(judge(blank).offScreen.length).toBeGreaterThan(3);
  });

  it("counts every spoken alert, and none that was a tone", () => {
    const quiet = judge(run).spokenAtMs.length;
    const twice: Engine = (turn) => [{ ...turn, announcements: [...turn.announcements, ...turn.announcements] }];
    const toned: Engine = (turn) => [{ ...turn, announcements: turn.announcements.map((a) => ({ ...a, text: "" })) }];
    expect(quiet).toBeGreaterThan(2);
    expect(judge(spoil(run, twice)).spokenAtMs.length).toBe(2 * quiet);
    expect(judge(spoil(run, toned)).spokenAtMs).toEqual([]);
  });
});

describe("the most within a stretch", () => {
  it.each([
    [[], 0],
    [[0, 1, 2], 3],
    [[0, 599, 600], 2],
    [[0, 600, 601, 1199, 1200], 3],
  ])("%j within 600: %d", (atMs, most) => {
    expect(mostWithin(atMs, 600).most).toBe(most);
  });
});
