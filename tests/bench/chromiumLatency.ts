import { existsSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { findBrowser } from "../browser/findBrowser.ts";
import { openPage } from "../browser/openPage.ts";
import { playedSounds, recordSound } from "../browser/recordSound.ts";
import { serveBuild } from "../browser/serveBuild.ts";
import { writeSpokenLines } from "../browser/spokenLines.ts";
import { ROOT } from "./lab.ts";
import type { Cell, Table } from "./report.ts";
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
const LEAD_S = 10;
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
  if (!existsSync(join(ROOT, "dist/index.html")))
    return { title, notes: ["Skipped: there is no build. Run `npm run build` first."], columns, rows: [] };
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
  const folder = mkdtempSync(join(tmpdir(), "tragus-latency-"));
  const microphoneWav = join(folder, "lines.wav");
  await writeSpokenLines(microphoneWav, LINES, [LEAD_S, ...LINES.map(() => GAP_S)], "slt");
  const served = await serveBuild();
  const opened = await openPage({
    browserPath: findBrowser(),
    origin: served.origin,
    microphoneWav,
    initScripts: [recordSound],
  });
  const { page, context } = opened;
  const sinceOpened = async (): Promise<number> => {
    await page.getByText("Listening", { exact: true }).first().waitFor({ timeout: 60_000 });
    return page.evaluate(() => performance.now());
  };
  await sinceOpened();
  while (!(await page.evaluate(() => navigator.serviceWorker.controller?.state === "activated")))
    await page.waitForTimeout(200);
  // From here on as installed: no network, everything from the device, the microphone's recording from its start.
  await context.setOffline(true);
  await page.reload();
  const openToListeningMs = await sinceOpened();
  await page.waitForTimeout((LEAD_S + LINES.length * (GAP_S + 1.5)) * 1000);
  const sounds = await playedSounds(page);
  const { ends, originMs } = await page.evaluate(() => ({
    ends: window.speechEnds,
    originMs: performance.timeOrigin,
  }));
  await opened.close();
  await served.close();
  rmSync(folder, { recursive: true, force: true });

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
