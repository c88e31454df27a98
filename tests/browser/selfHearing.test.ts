import { afterAll, beforeAll, describe, expect, inject, it, vi } from "vitest";
import type { Fact } from "../../src/log/facts.ts";
import { openPage, type OpenedPage } from "./openPage.ts";
import { readFacts } from "./readFacts.ts";
import { serveBuild, type Served } from "./serveBuild.ts";

/** Invented. The second and the last raise an alert; the fourth leaves a question. */
const TYPED = ["heart rate 92", "110/60", "sats 96", "icp fifteen", "one five", "map 62"];
const EACH_MS = 4_500;

/** Runs in the page before its own scripts: what the page plays comes back in its microphone, 30 ms later and 10 dB softer. */
function loopBack(): void {
  const DELAY_S = 0.03;
  const GAIN = 10 ** (-10 / 20);
  const HISS = 0.001;
  const connect = AudioNode.prototype.connect as (this: AudioNode, to: AudioNode, ...rest: number[]) => AudioNode;
  const { mediaDevices } = navigator;
  const open = mediaDevices.getUserMedia.bind(mediaDevices);
  const outputs = new Map<BaseAudioContext, MediaStreamAudioDestinationNode>();
  const room = { context: undefined as AudioContext | undefined, into: undefined as AudioNode | undefined };
  const loop = {
    /** Sound goes from one context to another by way of a stream. */
    join(output: MediaStreamAudioDestinationNode) {
      if (room.context === undefined || room.into === undefined) return;
      connect.call(room.context.createMediaStreamSource(output.stream), room.into);
    },
  };
  mediaDevices.getUserMedia = async (constraints) => {
    await open(constraints);
    const context = new AudioContext();
    await context.resume();
    const microphone = context.createMediaStreamDestination();
    const delay = context.createDelay(1);
    delay.delayTime.value = DELAY_S;
    const gain = context.createGain();
    gain.gain.value = GAIN;
    connect.call(delay, gain);
    connect.call(gain, microphone);
    const buffer = context.createBuffer(1, context.sampleRate, context.sampleRate);
    buffer.copyToChannel(
      Float32Array.from({ length: context.sampleRate }, () => HISS * (2 * Math.random() - 1)),
      0,
    );
    const hiss = context.createBufferSource();
    hiss.buffer = buffer;
    hiss.loop = true;
    connect.call(hiss, microphone);
    hiss.start();
    room.context = context;
    room.into = delay;
    outputs.forEach((output) => loop.join(output));
    return microphone.stream;
  };
  AudioNode.prototype.connect = function (this: AudioNode, to: AudioNode, ...rest: number[]) {
    if (to instanceof AudioDestinationNode && !(this instanceof AudioWorkletNode)) {
      const context = this.context as AudioContext;
      const output = outputs.get(context) ?? context.createMediaStreamDestination();
      if (!outputs.has(context)) {
        outputs.set(context, output);
        loop.join(output);
      }
      connect.call(this, output);
    }
    return connect.call(this, to, ...rest);
  } as typeof AudioNode.prototype.connect;
}

describe("a case typed beside a loudspeaker that the microphone hears, without an echo canceller", () => {
  let served: Served;
  let opened: OpenedPage;
  let facts: readonly Fact[];

  beforeAll(async () => {
    served = await serveBuild();
    opened = await openPage({ browserPath: inject("browserPath"), origin: served.origin, initScripts: [loopBack] });
    const { page } = opened;
    await page.getByText("Listening", { exact: true }).first().waitFor({ timeout: 60_000 });
    // The voice loads after the listener: lines that it cannot answer yet would show nothing.
    const speaks = async () => (await readFacts(page)).some(({ type }) => type === "speech.started");
    await vi.waitFor(async () => expect(await speaks()).toBe(true), { timeout: 60_000, interval: 200 });
    for (const line of TYPED) {
      await page.getByRole("textbox", { name: "Type instead of speaking" }).first().fill(line);
      await page.keyboard.press("Enter");
      await page.waitForTimeout(EACH_MS);
    }
    facts = await readFacts(page);
  }, 180_000);

  afterAll(async () => {
    await opened.close();
    await served.close();
  });

  it("holds what was typed, and nothing that was heard", () => {
    const vitals = facts.flatMap((f) => (f.type === "vital.recorded" ? [[f.code, f.value, f.by]] : []));
    expect(vitals).toEqual([
      ["hr", 92, "typed"],
      ["sbp", 110, "typed"],
      ["dbp", 60, "typed"],
      ["spo2", 96, "typed"],
      ["icp", 15, "typed"],
      ["map", 62, "typed"],
    ]);
    expect(facts.flatMap((f) => ("by" in f ? [f.by] : []))).not.toContain("listener");
    expect(facts.filter((f) => f.type === "question.asked")).toHaveLength(1);
  });

  it("does say something, and the microphone does hear it: our voice is taken for somebody who talks over it", () => {
    const said = facts.flatMap((f) => (f.type === "speech.started" ? [f.text] : []));
    expect(said.length).toBeGreaterThanOrEqual(TYPED.length);
    expect(facts.filter((f) => f.type === "speech.cut").length).toBeGreaterThan(0);
  });

  it("does not cut itself off for ever: no sentence is begun more than three times", () => {
    const said = facts.flatMap((f) => (f.type === "speech.started" ? [f.text] : []));
    const times = said.map((text) => said.filter((other) => other === text).length);
    expect(Math.max(...times)).toBeLessThanOrEqual(3);
  });
});
