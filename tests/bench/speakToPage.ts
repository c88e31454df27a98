import { existsSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { findBrowser } from "../browser/findBrowser.ts";
import { openPage } from "../browser/openPage.ts";
import { playedSounds, recordSound, type PlayedSound, type SpeechEnd } from "../browser/recordSound.ts";
import { serveBuild } from "../browser/serveBuild.ts";
import { writeSpokenLines } from "../browser/spokenLines.ts";
import { ROOT } from "./lab.ts";

const LEAD_S = 10;
/** Longer than any of the lines that are said. */
const LINE_S = 1.5;

export const hasBuild = (): boolean => existsSync(join(ROOT, "dist/index.html"));
export const NO_BUILD = "Skipped: there is no build. Run `npm run build` first.";

export type SpokenTo = {
  readonly sounds: readonly PlayedSound[];
  readonly ends: readonly SpeechEnd[];
  /** When the page was given what was heard, `performance.now()`. */
  readonly heardAtMs: readonly number[];
  /** Unix ms at which the page's `performance.now()` was 0. */
  readonly originMs: number;
  readonly openToListeningMs: number;
};

/**
 * Says lines to the built page through Chromium's fake microphone, started anew without a network, and notes what came of it.
 *
 * @param gapsS quiet after each line, seconds. The build must exist.
 */
export async function speakToPage(lines: readonly string[], gapsS: readonly number[]): Promise<SpokenTo> {
  const folder = mkdtempSync(join(tmpdir(), "tragus-latency-"));
  const microphoneWav = join(folder, "lines.wav");
  await writeSpokenLines(microphoneWav, lines, [LEAD_S, ...gapsS], "slt");
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
  const lastsS = LEAD_S + gapsS.reduce((total, gapS) => total + gapS + LINE_S, 0);
  await page.waitForTimeout(lastsS * 1000);
  const sounds = await playedSounds(page);
  const noted = await page.evaluate(() => ({
    ends: window.speechEnds,
    heardAtMs: window.heardAtMs,
    originMs: performance.timeOrigin,
  }));
  await opened.close();
  await served.close();
  rmSync(folder, { recursive: true, force: true });
  return { sounds, ...noted, openToListeningMs };
}
