import type { Flite } from "../../src/adapters/voice/synthesise.ts";
import type { AppContext } from "../../src/app/context.ts";
import { takeUtterance } from "../../src/app/takeTurn.ts";
import type { Cell, Table } from "./report.ts";
import { caseAfter } from "./scoring.ts";

const START_MS = 1_800_000_000_000;

type Said = {
  readonly name: string;
  readonly before: readonly string[];
  readonly words: string;
  readonly laterMs: number;
};

const status = (name: string, before: readonly string[], laterMs: number): Said => ({
  name: `status: ${name}`,
  before,
  words: "status",
  laterMs,
});
const readBack = (words: string): Said => ({ name: "read-back", before: [], words, laterMs: 0 });

const SAYINGS: readonly Said[] = [
  status("pressure on target, no ICP, just said", ["one thirty over eighty"], 1_000),
  status("pressure under target, no ICP, two minutes old", ["ninety over fifty"], 120_000),
  status("pressure under target, ICP measured, just said", ["one ten over sixty", "i c p twenty two"], 1_000),
  status("the same, two minutes old", ["one ten over sixty", "i c p twenty two"], 120_000),
  ...[
    "one ten over sixty",
    "one fifty over ninety",
    "systolic one ten",
    "map ninety two",
    "map fifty eight",
    "heart rate one oh five",
    "breaths fourteen",
    "sats ninety four",
    "end tidal thirty five",
    "end tidal four point five kilopascals",
    "i c p twenty two",
    "temp thirty six point five",
    "glucose five point five",
    "eyes three",
    "verbal four",
    "motor five",
    "left pupil four brisk",
    "both pupils three reactive",
    "weight eighty two kilos",
    "height one seventy eight centimetres",
    "age forty five",
  ].map(readBack),
];

/** How long our own sentences last with the built-in voice at its usual speed. */
export function sentencesTable(context: AppContext, flite: Flite): Table {
  const rows = SAYINGS.map(({ name, before, words, laterMs }): readonly Cell[] => {
    const state = caseAfter(context, before, START_MS);
    const utterance = { by: "typed", candidates: [{ words, score: 0 }], endedAtMs: START_MS + laterMs } as const;
    const turn = takeUtterance(context, state, utterance, START_MS + laterMs);
    const reply = turn.answer?.reply ?? "";
    const withinMs = turn.answer?.withinMs;
    const sound = flite.synthesise(reply, withinMs === undefined ? {} : { withinMs });
    if (!sound.ok) throw new Error(sound.error.detail);
    const seconds = sound.value.pcm.length / sound.value.sampleRate;
    return [name, words, turn.answer?.outcome ?? "", reply, seconds.toFixed(1), seconds <= 4 ? "" : "over"];
  });
  return {
    title: "How long our sentences last",
    notes: [
      "Built-in voice as the app asks for it (the status sentence briskly), sound from first to last sample. Budget: ≤ 4 s each. Alerts that a value raises are said apart.",
    ],
    columns: ["what", "said", "outcome", "our sentence", "seconds", "budget"],
    rows,
  };
}
