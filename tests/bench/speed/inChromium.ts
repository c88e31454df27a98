import { readDictionary, readGrammarSources } from "../../../src/cli/readGrammars.ts";
import { findBrowser } from "../../browser/findBrowser.ts";
import { openPage } from "../../browser/openPage.ts";
import { serveScripts } from "../../browser/serveScripts.ts";
import type { PageTask, timeInPage } from "./inPage.ts";
import type { StageTimes } from "./stages.ts";

/** As the development server gives it. */
const PAGE_SCRIPT = "/tests/bench/speed/inPage.ts";

export type ChromiumRun = {
  readonly name: string;
  readonly isolated: boolean;
  readonly times: readonly StageTimes[];
};

export type ChromiumSpeed = {
  readonly runs: readonly ChromiumRun[];
  /** What came of asking for a graphics processor. */
  readonly webGpu: string;
};

/** The stages in headless Chromium, with one and with two threads in a page that may share memory. */
export async function speedInChromium(
  sounds: readonly Float32Array[],
  entries: PageTask["entries"],
): Promise<ChromiumSpeed> {
  const { origin, close: closeServer } = await serveScripts();
  const encoded = sounds.map((pcm) => Buffer.from(pcm.buffer, pcm.byteOffset, pcm.byteLength).toString("base64"));
  const about = { sources: readGrammarSources(), dictionaryText: readDictionary(), entries, sounds: encoded };

  const runs: ChromiumRun[] = [];
  let webGpu = "";
  try {
    for (const threads of [1, 2]) {
      const { page, close } = await openPage({ browserPath: findBrowser(), origin });
      const task: PageTask = { threads, ...about };
      const times = await page.evaluate(
        async ([script, given]) => ((await import(script)) as { timeInPage: typeof timeInPage }).timeInPage(given),
        [PAGE_SCRIPT, task] as const,
      );
      const isolated = await page.evaluate(() => crossOriginIsolated);
      runs.push({ name: `Chromium, ${threads} ${threads === 1 ? "thread" : "threads"}`, isolated, times });
      webGpu = await page.evaluate(async () => {
        const { gpu } = navigator as { gpu?: { requestAdapter(): Promise<unknown> } };
        if (gpu === undefined) return "navigator.gpu is missing";
        return (await gpu.requestAdapter()) === null ? "navigator.gpu is there, but no adapter" : "an adapter is there";
      });
      await close();
    }
  } finally {
    await closeServer();
  }
  return { runs, webGpu };
}
