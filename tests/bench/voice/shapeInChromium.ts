import { resample } from "../../../src/listener/resample.ts";
import { findBrowser } from "../../browser/findBrowser.ts";
import { openPage } from "../../browser/openPage.ts";
import { serveScripts } from "../../browser/serveScripts.ts";
import { RATE_HZ } from "../lab.ts";
import type { PackedSound, shapeSounds } from "./shapeInPage.ts";

const PAGE_SCRIPT = "/tests/bench/voice/shapeInPage.ts";

/** Each sound as headless Chromium plays it through the app's own shaping. @returns 16 kHz, as what is given. */
export async function shapeInChromium(sounds: readonly Float32Array[]): Promise<readonly Float32Array[]> {
  const served = await serveScripts();
  const { page, close } = await openPage({ browserPath: findBrowser(), origin: served.origin });
  try {
    const packed = sounds.map((pcm): PackedSound => ({
      bytes: Buffer.from(pcm.buffer, pcm.byteOffset, pcm.byteLength).toString("base64"),
      rateHz: RATE_HZ,
    }));
    const shaped = await page.evaluate(
      async ([script, given]) => ((await import(script)) as { shapeSounds: typeof shapeSounds }).shapeSounds(given),
      [PAGE_SCRIPT, packed] as const,
    );
    return shaped.map(({ bytes, rateHz }) =>
      resample(new Float32Array(new Uint8Array(Buffer.from(bytes, "base64")).buffer), rateHz, RATE_HZ),
    );
  } finally {
    await close();
    await served.close();
  }
}
