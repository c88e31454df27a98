import { createServer } from "node:http";
import { mkdtempSync, rmSync } from "node:fs";
import type { AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, inject, it } from "vitest";
import { openPage, type OpenedPage } from "./openPage.ts";
import { readFacts } from "./readFacts.ts";
import { joinWithSilence, writeWav } from "./wav.ts";

// A page made for this test: it misbehaves in every way that the browser tests must notice, and it listens.
const PAGES: Readonly<Record<string, readonly [string, string]>> = {
  "/": [
    "text/html",
    `<!doctype html><title>invented</title><main></main><script>
      new Worker("/worker.js");
      navigator.serviceWorker.register("/service.js");
      console.error("said on purpose");
      setTimeout(() => { throw new Error("thrown on purpose"); }, 0);
      window.loudest = 0;
      navigator.mediaDevices.getUserMedia({ audio: true }).then((stream) => {
        const audio = new AudioContext();
        window.audioState = () => audio.state;
        const meter = audio.createAnalyser();
        audio.createMediaStreamSource(stream).connect(meter);
        const samples = new Float32Array(meter.fftSize);
        setInterval(() => {
          meter.getFloatTimeDomainData(samples);
          for (const s of samples) window.loudest = Math.max(window.loudest, Math.abs(s));
        }, 20);
      });
    </script>`,
  ],
  "/worker.js": ["text/javascript", `fetch("http://worker.invalid/").catch(() => {});`],
  "/service.js": [
    "text/javascript",
    `oninstall = (e) => e.waitUntil(fetch("http://service.invalid/").catch(() => {}));`,
  ],
};

const RATE_HZ = 16_000;
const server = createServer((request, response) => {
  const [type, body] = PAGES[request.url ?? "/"] ?? ["text/plain", ""];
  response.writeHead(200, { "content-type": type }).end(body);
});
const folder = mkdtempSync(join(tmpdir(), "tragus-harness-"));
let opened: OpenedPage;

beforeAll(async () => {
  await new Promise<void>((ready) => server.listen(0, "127.0.0.1", ready));
  // It begins when the microphone is opened, and must last until the page looks.
  const tone = Float32Array.from({ length: 20 * RATE_HZ }, (_, i) => 0.5 * Math.sin((2 * Math.PI * 440 * i) / RATE_HZ));
  const wav = join(folder, "tone.wav");
  writeWav(wav, joinWithSilence([tone], [0.5, 5], RATE_HZ), RATE_HZ);
  opened = await openPage({
    browserPath: inject("browserPath"),
    origin: `http://127.0.0.1:${String((server.address() as AddressInfo).port)}`,
    microphoneWav: wav,
  });
});

afterAll(async () => {
  await opened.close();
  server.close();
  rmSync(folder, { recursive: true, force: true });
});

it.each(["http://worker.invalid/", "http://service.invalid/"])("notices a request to %s", async (address) => {
  await expect.poll(() => opened.strayRequests, { timeout: 10_000 }).toContain(address);
});

it.each(["said on purpose", "thrown on purpose"])("notices the error %s", async (text) => {
  await expect.poll(() => opened.errors, { timeout: 10_000 }).toContain(text);
});

it("plays the sound into the microphone", async () => {
  await expect.poll(() => opened.page.evaluate("window.loudest"), { timeout: 10_000 }).toBeGreaterThan(0.1);
});

it("lets the page sound without a gesture while it holds the microphone", async () => {
  await expect.poll(() => opened.page.evaluate("window.audioState()"), { timeout: 10_000 }).toBe("running");
});

it("reads the record from the database, and makes none where there is none", async () => {
  expect(await readFacts(opened.page)).toEqual([]);
  expect(await opened.page.evaluate("indexedDB.databases()")).toEqual([]);
  await opened.page.evaluate(
    () =>
      new Promise<void>((resolve) => {
        const opening = indexedDB.open("tragus", 1);
        opening.onupgradeneeded = () => {
          const facts = opening.result.createObjectStore("facts", { keyPath: ["caseId", "n"] });
          for (const n of [1, 0]) facts.add({ caseId: "a", n, fact: { id: `f${String(n)}` } });
        };
        opening.onsuccess = () => {
          opening.result.close();
          resolve();
        };
      }),
  );
  expect(await readFacts(opened.page)).toEqual([{ id: "f0" }, { id: "f1" }]);
});
