import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it, vi } from "vitest";
import { renderTone } from "../../src/adapters/voice/tones.ts";
import { decodeVoice } from "./decodeVoice.ts";
import { openPage, type OpenedPage } from "./openPage.ts";
import { readFacts } from "./readFacts.ts";
import { playedSounds, recordSound, type PlayedSound } from "./recordSound.ts";
import { serveBuild, type Served } from "./serveBuild.ts";
import { writeSpokenLines } from "./spokenLines.ts";

/** Invented. Said by a made voice into the microphone; nothing is typed, clicked or pressed. */
const LINES = ["blood pressure one ten over sixty", "sats ninety six", "next"];
/** Seconds of quiet before each line: until the voice has loaded and said its first words, then for each answer. */
const GAPS_S = [20, 12, 8, 8];
const LOADING = { timeout: 60_000, interval: 200 };
const WHOLE = { timeout: 90_000, interval: 500 };

/**
 * Runs in the page: no microphone until the test says so; and then, as from somebody who answers slowly, not before the
 * listener has loaded: the recording starts with the microphone, however long loading takes.
 */
function refuseMicrophoneAtFirst(): void {
  const { mediaDevices } = navigator;
  const ask = mediaDevices.getUserMedia.bind(mediaDevices);
  const Original = Worker;
  const loaded = new Promise<void>((resolve) => {
    window.Worker = class extends Original {
      constructor(url: string | URL, options?: WorkerOptions) {
        super(url, options);
        this.addEventListener("message", ({ data }: MessageEvent<{ op?: string }>) => {
          if (options?.name === "listener" && data.op === "ready") resolve();
        });
      }
    };
  });
  mediaDevices.getUserMedia = async (constraints) => {
    if (localStorage.getItem("microphone") !== "allowed")
      throw new DOMException("refused by the test", "NotAllowedError");
    await loaded;
    return ask(constraints);
  };
}

const isStored = (page: Page): Promise<boolean> =>
  page.evaluate(() => navigator.serviceWorker.controller?.state === "activated");

const close = (a: Float32Array, b: Float32Array): boolean =>
  a.length === b.length && a.every((sample, i) => Math.abs(sample - (b[i] ?? 0)) < 1e-6);

describe("a case by voice alone, the network cut before it starts", () => {
  const folder = mkdtempSync(join(tmpdir(), "tragus-spoken-"));
  let served: Served;
  let opened: OpenedPage;
  let sounds: readonly PlayedSound[];

  beforeAll(async () => {
    const microphoneWav = join(folder, "lines.wav");
    await writeSpokenLines(microphoneWav, LINES, GAPS_S, "slt");
    served = await serveBuild();
    const browserPath = inject("browserPath");
    opened = await openPage({
      browserPath,
      origin: served.origin,
      microphoneWav,
      initScripts: [recordSound, refuseMicrophoneAtFirst],
    });
    const { page, context } = opened;
    // The first visit is refused the microphone; it stores the app for the next one.
    await vi.waitFor(() => expect(page.innerText("body")).resolves.toMatch(/Microphone not allowed/), LOADING);
    await vi.waitFor(() => expect(isStored(page)).resolves.toBe(true), LOADING);
    await context.setOffline(true);
    await page.evaluate(() => localStorage.setItem("microphone", "allowed"));
    await page.reload({ waitUntil: "load" });
    await vi.waitFor(() => expect(page.innerText("main")).resolves.toMatch(/heard\s+next/i), WHOLE);
    // The last words are still to be said.
    await page.waitForTimeout(7000);
    sounds = await playedSounds(page);
  }, 180_000);

  afterAll(async () => {
    await opened.close();
    await served.close();
    rmSync(folder, { recursive: true, force: true });
  });

  it("keeps what was said, durably and in the right units", async () => {
    const facts = await readFacts(opened.page);
    const vitals = facts.flatMap((f) => (f.type === "vital.recorded" ? [[f.code, f.value, f.unit, f.by]] : []));
    expect(vitals).toEqual([
      ["sbp", 110, "mm[Hg]", "listener"],
      ["dbp", 60, "mm[Hg]", "listener"],
      ["spo2", 96, "%", "listener"],
    ]);
    expect(facts.at(0)).toMatchObject({ type: "case.opened" });
    expect(facts).toContainEqual(expect.objectContaining({ type: "step.called", stepId: "bleeding" }));
  });

  it("shows it", async () => {
    const text = (await opened.page.innerText("main")).replace(/\s+/g, " ");
    expect(text).toMatch(/MAP 77/);
    expect(text).toMatch(/13 under target 90/);
    expect(text).toMatch(/110\/60/);
  });

  it("sounds the tone of a high alert before its words", () => {
    const toneAt = sounds.findIndex((s) => close(s.pcm, renderTone("high", s.sampleRate)));
    expect(toneAt).toBeGreaterThanOrEqual(0);
  });

  it("says what the text says, as a recogniser hears it", async () => {
    const heard = await decodeVoice(sounds);
    expect(heard).toEqual([
      "example protocol not approved for patients",
      "this browser may clear the record",
      "map seventy seven thirteen under ninety",
      "pressure one ten over sixty",
      "sats ninety six",
      "bleeding stopped pelvis bound if suspected",
      "preparation phase",
    ]);
  });

  it("asks nobody for anything, and reports no error", () => {
    expect(opened.strayRequests).toEqual([]);
    expect(opened.errors).toEqual([]);
  });

  it("is all there after a reload without a network", async () => {
    const { page } = opened;
    await page.reload({ waitUntil: "load" });
    await expect.poll(() => page.innerText("body"), { timeout: 30_000 }).toMatch(/110\/60/);
    await page.getByText("Listening", { exact: true }).first().waitFor({ timeout: 60_000 });
  });
});
