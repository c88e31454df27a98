import { renderTone } from "../../src/adapters/voice/tones.ts";
import type { PlayedSound } from "../browser/recordSound.ts";
import type { Cell, Table } from "./report.ts";
import { hasBuild, NO_BUILD, speakToPage } from "./speakToPage.ts";
import { quantile } from "./stopwatch.ts";

/** Invented. Each is critical for an adult; taken back, it is as new the next time. */
const CRITICAL = ["MAP sixty", "sats eighty eight"];
const TAKEN_BACK = "disregard";
/** Until the tone and the words of an alert are over, and those of what was taken back. */
const AFTER_ALERT_S = 9;
const AFTER_STRIKE_S = 5;
const SAID = { quick: 10, full: 20 };

/** A sound that is as long as the tone of a critical value. */
const isTone = ({ pcm, sampleRate }: PlayedSound): boolean => pcm.length === renderTone("high", sampleRate).length;

const beginsMs = ({ scheduledAtMs, startsInMs }: PlayedSound): number => scheduledAtMs + startsInMs;

/** From the end of a critical value, said to the built page in Chromium, to the tone of its alert. */
export async function chromiumToneTable(quick: boolean): Promise<Table> {
  const title = "Latency in Chromium: from a critical value to the alert tone";
  const columns = ["from → to", "n", "median ms", "95th ms", "budget"];
  if (!hasBuild()) return { title, notes: [NO_BUILD], columns, rows: [] };
  const count = quick ? SAID.quick : SAID.full;
  const lines = Array.from({ length: count }, (_, i) => [CRITICAL[i % CRITICAL.length]!, TAKEN_BACK]).flat();
  const gapsS = lines.map((line) => (line === TAKEN_BACK ? AFTER_STRIKE_S : AFTER_ALERT_S));
  const { sounds, ends, heardAtMs, originMs } = await speakToPage(lines, gapsS);
  const tones = sounds.filter(isTone).map(beginsMs);
  const rows = ends.flatMap((end, i) => {
    const isOfThis = (atMs: number): boolean => atMs >= end.toldAtMs && atMs < (ends[i + 1]?.toldAtMs ?? Infinity);
    const tone = tones.find(isOfThis);
    const heard = heardAtMs.find(isOfThis);
    return tone === undefined || heard === undefined ? [] : [{ end, heard, tone }];
  });
  const row = (name: string, times: readonly number[], budget: string): readonly Cell[] => [
    name,
    times.length,
    Math.round(quantile(times, 0.5)),
    Math.round(quantile(times, 0.95)),
    budget,
  ];
  return {
    title,
    notes: [
      `${count} critical values said by a made voice through Chromium's fake microphone, each taken back after its alert; ` +
        `${rows.length} had their tone. Understood: the page is given what was heard. The end of speech is the listener's own.`,
    ],
    columns,
    rows: [
      row(
        "understood → tone begins",
        rows.map(({ heard, tone }) => tone - heard),
        "≤ 500",
      ),
      row(
        "end of speech detected → tone begins",
        rows.map(({ end, tone }) => tone - end.toldAtMs),
        "",
      ),
      row(
        "end of speech → tone begins (with the wait for silence)",
        rows.map(({ end, tone }) => originMs + tone - end.atMs),
        "",
      ),
    ],
  };
}
