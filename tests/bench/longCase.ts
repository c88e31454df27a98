import { setFlagsFromString } from "node:v8";
import { runInNewContext } from "node:vm";
import type { AppContext, AppState } from "../../src/app/context.ts";
import type { Utterance } from "../../src/app/ports.ts";
import { takeTick, takeUtterance } from "../../src/app/takeTurn.ts";
import type { Fact } from "../../src/log/facts.ts";
import type { Table } from "./report.ts";
import { caseAfter } from "./scoring.ts";
import { quantile } from "./stopwatch.ts";

const START_MS = 1_800_000_000_000;
const SIZES = [0, 1_000, 10_000] as const;
const TURNS = 200;
const TURN_MS = 20_000;

/** Said in turn, round and round: pressures on both sides of the target, so that alerts come and go too. */
const ROUND = [
  "one ten over sixty",
  "rate ninety",
  "sats ninety four",
  "eighty eight over fifty",
  "end tidal thirty five",
  "one twenty over seventy",
  "i c p twenty two",
  "status",
  "temp thirty six point five",
  "left pupil four brisk",
];

const typed = (words: string, endedAtMs: number): Utterance => ({
  by: "typed",
  candidates: [{ words, score: 0 }],
  endedAtMs,
});

function collected(): number {
  setFlagsFromString("--expose-gc");
  (runInNewContext("gc") as () => void)();
  return process.memoryUsage().heapUsed;
}

const MIB = 2 ** 20;

/** What one utterance and one passing second cost in a new case and in very long ones, and what the case weighs. */
export function longCaseTable(context: AppContext): Table {
  let state: AppState = caseAfter(context, [], START_MS);
  let nowMs = START_MS;
  let said = 0;
  const facts: Fact[] = [];
  const say = (): number => {
    nowMs += TURN_MS;
    const utterance = typed(ROUND[said++ % ROUND.length]!, nowMs);
    const startedMs = performance.now();
    const turn = takeUtterance(context, state, utterance, nowMs);
    const spentMs = performance.now() - startedMs;
    state = turn.state;
    facts.push(...turn.facts);
    return spentMs;
  };
  const tick = (): number => {
    nowMs += 1_000;
    const startedMs = performance.now();
    const turn = takeTick(context, state, nowMs);
    const spentMs = performance.now() - startedMs;
    state = turn.state;
    facts.push(...turn.facts);
    return spentMs;
  };
  for (let i = 0; i < TURNS; i++) say(); // warms the code up, then starts afresh
  [state, said, facts.length] = [caseAfter(context, [], START_MS), 0, 0];
  const emptyHeap = collected();
  const rows = SIZES.map((size) => {
    while (state.log.factCount < size) say();
    const at = state.log.factCount;
    const heapMib = (collected() - emptyHeap) / MIB;
    const logMib = JSON.stringify(facts).length / MIB;
    const turns = Array.from({ length: TURNS }, say);
    const ticks = Array.from({ length: TURNS }, tick);
    const times = [turns, ticks].flatMap((spent) => [0.5, 0.95].map((q) => quantile(spent, q).toFixed(3)));
    return [at, ...times, heapMib.toFixed(1), logMib.toFixed(1)];
  });
  return {
    title: "One utterance in a long case",
    notes: [
      `Typed words to decision, log and rules: ${TURNS} utterances and ${TURNS} seconds at each size. Budget: ≤ 2 ms, and flat.`,
    ],
    columns: [
      "events",
      "utterance median ms",
      "95th ms",
      "second median ms",
      "95th ms",
      "heap MiB over empty",
      "log as JSON MiB",
    ],
    rows,
  };
}
