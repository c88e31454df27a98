import { describe, expect, it } from "vitest";
import type { FactStore } from "../../src/app/ports.ts";
import { fail, ok } from "../../src/core/result.ts";
import { conversation, FakeRecogniser, FakeSpeaker, settle } from "./talkFakes.ts";

const HEARD = "mark heard";

describe("hearing and speaking", () => {
  it("marks what was heard, reads it back, and shows both", async () => {
    const { recogniser, speaker, last } = await conversation();
    recogniser.hears("heart rate ninety");
    await settle();
    expect(speaker.told).toEqual([HEARD, "Heart rate ninety."]);
    expect(last()).toMatchObject({
      lastHeard: { words: "heart rate ninety", outcome: "recorded" },
      lastSpoken: undefined,
    });
    speaker.starts();
    expect(last()?.lastSpoken).toBe("Heart rate ninety.");
  });

  it.each([
    ["i c p fifteen", "mark asked"],
    ["done", "mark refused"],
    ["status", HEARD],
  ])("%s: %s", async (words, mark) => {
    const { recogniser, speaker } = await conversation();
    recogniser.hears(words);
    await settle();
    expect(speaker.told[0]).toBe(mark);
  });

  it("makes no sound for what is not in the language", async () => {
    const { recogniser, speaker } = await conversation();
    recogniser.hears("the weather is nice");
    await settle();
    expect(speaker.told).toEqual([]);
  });

  it("says an alert with its tone before the reply", async () => {
    const { recogniser, speaker } = await conversation();
    recogniser.hears("map six five");
    await settle();
    expect(speaker.told.slice(1)).toEqual(["high: Measured MAP sixty five, twenty five under ninety."]);
    await speaker.ends();
    expect(speaker.told.at(-1)).toBe("MAP sixty five.");
  });

  it("announces again by the clock", async () => {
    const { recogniser, speaker, passMs } = await conversation();
    recogniser.hears("map six five");
    await settle();
    await speaker.ends();
    await speaker.ends();
    await passMs(30_000);
    expect(speaker.told.at(-1)).toBe("high: Measured MAP sixty five, twenty five under ninety.");
    await speaker.ends();
    await passMs(60_000);
    expect(speaker.told.at(-1)).toBe("high: Measured MAP sixty five, twenty five under ninety. Two minutes old.");
  });

  it("tells the recogniser that our voice sounds only from its start to its end", async () => {
    const { recogniser, speaker } = await conversation();
    const speaking = () => recogniser.calls.filter((c) => c.startsWith("speaking"));
    recogniser.hears("heart rate ninety");
    await settle();
    expect(speaking()).toEqual([]);
    speaker.starts();
    expect(speaking()).toEqual(["speaking true"]);
    await speaker.ends();
    expect(speaking()).toEqual(["speaking true", "speaking false"]);
  });

  it("is silent as soon as the user talks, and takes what the user says", async () => {
    const { recogniser, speaker, session } = await conversation();
    recogniser.hears("status");
    await settle();
    speaker.starts();
    recogniser.send({ kind: "speechStarted", atMs: 0 });
    expect(speaker.told.at(-1)).toBe("silence");
    await settle();
    expect(recogniser.calls.at(-1)).toBe("speaking false");
    recogniser.send({ kind: "speechEnded", atMs: 1 });
    recogniser.hears("heart rate ninety");
    await settle();
    expect(speaker.told.at(-1)).toBe("Heart rate ninety.");
    expect(session.state.log.vitals.hr?.entry.value).toBe(90);
  });

  it("goes on after words that could not be said, and shows why", async () => {
    const { recogniser, speaker, last } = await conversation();
    speaker.failsToSay = true;
    recogniser.hears("map six five");
    await settle();
    expect(speaker.told.slice(1)).toEqual([
      "high: Measured MAP sixty five, twenty five under ninety.",
      "mark mute",
      "MAP sixty five.",
    ]);
    expect(last()).toMatchObject({ voiceText: "Voice stopped. Read the screen.", lastSpoken: "MAP sixty five." });
    speaker.failsToSay = false;
    recogniser.hears("read back");
    await settle();
    expect(speaker.told.at(-1)).toBe("MAP sixty five.");
  });

  it("listens for answers while a question waits, and only then", async () => {
    const { recogniser, passMs } = await conversation();
    const grammars = () => recogniser.calls.filter((c) => c.startsWith("grammar"));
    recogniser.hears("i c p fifteen");
    await settle();
    expect(grammars()).toEqual(["grammar asked"]);
    recogniser.hears("one five");
    await settle();
    expect(grammars()).toEqual(["grammar asked", "grammar open"]);
    recogniser.hears("weight eighty");
    await settle();
    await passMs(30_000);
    expect(grammars()).toEqual(["grammar asked", "grammar open", "grammar asked", "grammar open"]);
  });

  it("passes on the meter, the mode, the button and the stop", async () => {
    const { recogniser, talk, levels, last } = await conversation();
    recogniser.send({ kind: "level", levelDb: -30, noiseDb: -60, inSpeech: false });
    talk.setMode("held");
    talk.hold(true);
    talk.hold(false);
    talk.stopListening();
    expect(levels).toEqual([-30]);
    expect(recogniser.calls.slice(1)).toEqual(["mode held", "hold true", "hold false", "stop"]);
    expect(last()?.mode).toBe("held");
  });
});

describe("faults of hearing", () => {
  it("says and shows a refused microphone, and typed lines still work", async () => {
    const recogniser = new FakeRecogniser();
    recogniser.startsWith = fail({ kind: "microphone-refused" });
    const { speaker, talk, last } = await conversation(undefined, recogniser);
    await settle();
    expect(speaker.told).toEqual(["medium: Microphone not allowed. Allow it in the browser, or type."]);
    expect(last()).toMatchObject({
      hearing: "fault",
      hearingText: "Microphone not allowed. Allow it in the browser, or type.",
    });
    await talk.typed("heart rate 90");
    await speaker.ends();
    expect(speaker.told.at(-1)).toBe("Heart rate ninety.");
  });

  it.each([
    [{ kind: "microphone-lost" }, "Microphone lost. Check the plug, or type."],
    [{ kind: "microphone-silent", forMs: 5000 }, "Microphone is silent. Check the mute switch, or type."],
    [{ kind: "voice-faint" }, "Your voice is too faint. Bring the microphone closer, or type."],
    [{ kind: "worker-died", detail: "x" }, "Listening stopped and is starting again."],
    [{ kind: "timed-out", afterMs: 1 }, "Listening stopped and is starting again."],
  ] as const)("says %o, and shows that it works again", async (error, text) => {
    const { recogniser, speaker, last } = await conversation();
    recogniser.send({ kind: "fault", error });
    await settle();
    expect(speaker.told).toEqual([`medium: ${text}`]);
    expect(last()?.hearing).toBe("fault");
    recogniser.send({ kind: "recovered" });
    expect(last()).toMatchObject({ hearing: "listening", hearingText: "Listening" });
  });
});

describe("another engine, another voice", () => {
  it("gives the old engine up, and the new one hears in the same mode and grammar", async () => {
    const { talk, recogniser, speaker, session } = await conversation();
    talk.setMode("held");
    recogniser.hears("i c p fifteen");
    await settle();
    const fresh = new FakeRecogniser();
    await talk.replaceRecogniser(fresh);
    expect(recogniser.calls.at(-1)).toBe("dispose");
    expect(fresh.calls).toEqual(expect.arrayContaining(["mode held", "grammar asked", "start"]));
    recogniser.hears("five zero");
    await settle();
    expect(session.state.log.vitals.icp).toBeUndefined();
    fresh.hears("one five");
    await settle();
    expect(session.state.log.vitals.icp?.entry.value).toBe(15);
    expect(speaker.told).toContain("mark heard");
  });

  it("speaks with the new voice from then on", async () => {
    const { talk, recogniser, speaker } = await conversation();
    const fresh = new FakeSpeaker();
    await talk.replaceSpeaker(fresh);
    expect(speaker.told).toEqual(["dispose"]);
    recogniser.hears("heart rate ninety");
    await settle();
    expect(fresh.told).toEqual([HEARD, "Heart rate ninety."]);
  });
});

describe("the record", () => {
  const failing = (): FactStore & { works: boolean } => ({
    works: true,
    load: () => Promise.resolve(ok([])),
    erase: () => Promise.resolve(ok(undefined)),
    append() {
      return Promise.resolve(this.works ? ok(undefined) : fail({ kind: "quota-exceeded" }));
    },
  });

  it("says once that it is not saved, still reads back, and shows when it is saved again", async () => {
    const store = failing();
    const { recogniser, speaker, last } = await conversation(store);
    store.works = false;
    recogniser.hears("heart rate ninety");
    await settle();
    expect(speaker.told.at(-1)).toBe("high: Record not saved: storage is full. Write it down.");
    await speaker.ends();
    expect(speaker.told.at(-1)).toBe("Heart rate ninety.");
    expect(last()).toMatchObject({ saveFailed: true, saveText: "Not saved: “heart rate ninety”" });
    recogniser.hears("sats ninety six");
    await settle();
    await speaker.ends();
    await speaker.ends();
    expect(speaker.told.filter((t) => t.includes("not saved")).length).toBe(1);
    store.works = true;
    recogniser.hears("heart rate nine two");
    await settle();
    expect(last()).toMatchObject({ saveFailed: false, saveText: "Saved" });
  });

  it("stops ticking when it is disposed of", async () => {
    const { talk, recogniser, speaker, passMs } = await conversation();
    recogniser.hears("map six five");
    await settle();
    await speaker.ends();
    await speaker.ends();
    talk.dispose();
    const before = speaker.told.length;
    await passMs(120_000);
    expect(speaker.told.length).toBe(before);
  });
});
