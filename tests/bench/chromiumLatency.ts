import type { Cell, Table } from "./report.ts";
import { hasBuild, NO_BUILD, speakToPage } from "./speakToPage.ts";
import { quantile } from "./stopwatch.ts";

/** Invented. Each is answered with a mark and with words. */
const LINES = [
  "one twenty over eighty",
  "heart rate ninety two",
  "sats ninety six",
  "end tidal thirty eight",
  "one ten over seventy two",
  "left pupil four brisk",
  "suction ready",
  "temperature thirty six point five",
  "status",
  "next",
];
const GAP_S = 7;
const VOICE_RATE_HZ = 16_000;
const LONGEST_MARK_S = 0.15;

type ChromiumLatency = {
  readonly n: number;
  /** From the page being told that speech ended to the acknowledging mark being scheduled. */
  readonly detectedToMarkMs: readonly number[];
  /** From the end of the speech itself, the wait for silence included. */
  readonly speechEndToMarkMs: readonly number[];
  readonly speechEndToFirstWordMs: readonly number[];
  readonly openToListeningMs: number;
};

/** The same way of speaking and answering as `latency.ts`, in a real browser on the built page. Nothing where there is no build. */
export async function chromiumLatencyTable(): Promise<Table> {
  const title = "Latency in Chromium: from the end of speech to the answer";
  const columns = ["from → to", "n", "median ms", "95th ms", "budget"];
  if (!hasBuild()) return { title, notes: [NO_BUILD], columns, rows: [] };
  const got = await measure();
  const row = (name: string, times: readonly number[], budget: string): readonly Cell[] => [
    name,
    got.n,
    Math.round(quantile(times, 0.5)),
    Math.round(quantile(times, 0.95)),
    budget,
  ];
  return {
    title,
    notes: [
      `${LINES.length} lines said by a made voice through Chromium's fake microphone; ${got.n} answered. ` +
        `Started again without a network: listening ${Math.round(got.openToListeningMs)} ms after the page was opened (budget ≤ 3000).`,
    ],
    columns,
    rows: [
      row("end of speech detected → acknowledging mark", got.detectedToMarkMs, "≤ 300"),
      row("end of speech → acknowledging mark (with the wait for silence)", got.speechEndToMarkMs, ""),
      row("end of speech → first word of the answer", got.speechEndToFirstWordMs, "median ≤ 1000, 95th ≤ 1500"),
    ],
  };
}

/** Speaks to the built page in Chromium and times its answers. The build must exist. */
async function measure(): Promise<ChromiumLatency> {
  const { sounds, ends, originMs, openToListeningMs } = await speakToPage(
    LINES,
    LINES.map(() => GAP_S),
  );
  const marks = sounds.filter((s) => s.pcm.length / s.sampleRate <= LONGEST_MARK_S);
  const words = sounds.filter((s) => s.sampleRate === VOICE_RATE_HZ);
  const rows = ends.flatMap((end, i) => {
    const untilMs = ends[i + 1]?.toldAtMs ?? Infinity;
    const within = (s: { scheduledAtMs: number }) => s.scheduledAtMs >= end.toldAtMs && s.scheduledAtMs < untilMs;
    const mark = marks.find(within);
    const word = words.find(within);
    return mark === undefined || word === undefined ? [] : [{ end, mark, word }];
  });
  return {
    n: rows.length,
    detectedToMarkMs: rows.map(({ end, mark }) => mark.scheduledAtMs - end.toldAtMs),
    speechEndToMarkMs: rows.map(({ end, mark }) => originMs + mark.scheduledAtMs - end.atMs),
    speechEndToFirstWordMs: rows.map(({ end, word }) => originMs + word.scheduledAtMs - end.atMs),
    openToListeningMs,
  };
}
