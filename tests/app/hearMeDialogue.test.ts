import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { AFTERWARDS_MS } from "../../src/app/hearMeDialogue.ts";
import { HEAR_ME_LINES } from "../../src/app/hearMeLines.ts";
import type { ProfileStore, Utterance } from "../../src/app/ports.ts";
import { fail, ok } from "../../src/core/result.ts";
import type { VoiceProfile } from "../../src/listener/voiceProfile.ts";
import { leastM1 } from "../listener/certainSound.ts";
import { conversation, settle } from "./talkFakes.ts";

const SHAPE = { lengthMs: 1_600, levelDb: -30, noiseDb: -60, clipped: false };

/** One value in memory, as the device keeps it. */
function memory(kept?: VoiceProfile) {
  let profile = kept;
  const store: ProfileStore = {
    load: () => Promise.resolve(ok(profile)),
    save: (made) => Promise.resolve(ok(void (profile = made))),
    clear: () => Promise.resolve(ok(void (profile = undefined))),
  };
  return { store, kept: () => profile };
}

async function talking(store: ProfileStore = memory().store) {
  const all = await conversation(undefined, undefined, undefined, store);
  const { recogniser, clock } = all;
  const say = async (words: string, more: Partial<Utterance> = {}): Promise<void> => {
    const utterance: Utterance = {
      by: "listener",
      candidates: [{ words, score: 0 }],
      free: { score: 0, phones: 20 },
      shape: SHAPE,
      endedAtMs: clock.nowMs(),
      ...more,
    };
    recogniser.send({ kind: "heard", utterance });
    await settle();
  };
  const facts = () => all.session.state.log.factCount;
  return { ...all, say, facts };
}

describe("hear me by voice", () => {
  it("runs through its lines, tells the verdict, keeps it, and records no fact", async () => {
    const { store, kept } = memory();
    const { say, facts, last, speaker } = await talking(store);
    const before = facts();
    await say("hear me");
    expect(last()?.hearMe.running).toMatchObject({ line: HEAR_ME_LINES[0], number: 1 });
    await speaker.ends();
    for (const line of HEAR_ME_LINES) {
      await say(line);
      await speaker.ends();
    }
    expect(speaker.told.at(-1)).toBe("Heard well.");
    expect(last()?.hearMe).toMatchObject({ running: undefined, notice: "Heard well." });
    expect(kept()).toMatchObject({ verdict: "well", noiseDb: -60, version: 1 });
    expect(facts()).toBe(before);
  });

  it("listens with the words that end it, and then as before", async () => {
    const { say, recogniser } = await talking();
    const grammars = () => recogniser.calls.filter((c) => c.startsWith("grammar"));
    await say("hear me");
    expect(grammars()).toEqual(["grammar asked"]);
    await say("not now");
    expect(grammars()).toEqual(["grammar asked", "grammar open"]);
  });

  it("does not begin while a question waits", async () => {
    const { say, last, speaker } = await talking();
    await say("i c p fifteen");
    await speaker.ends();
    await say("hear me");
    expect(speaker.told.at(-1)).toBe("Answer the question first.");
    expect(last()?.hearMe.running).toBeUndefined();
  });

  it("does not begin on a doubtful hearing of the words", async () => {
    const { say, last, speaker } = await talking();
    const phones = 10;
    const doubtful = leastM1("take", "command", phones) - 0.05;
    await say("hear me", { free: { score: -doubtful * phones, phones } });
    expect(last()?.hearMe.running).toBeUndefined();
    expect(speaker.told).toEqual(["mark refused", "Say again."]);
  });

  it("says once more what was heard wrong, and what was not heard", async () => {
    const { say, speaker } = await talking();
    await say("hear me");
    await speaker.ends();
    await say("rate one oh nine");
    expect(speaker.told.at(-1)).toBe(`Heard rate one oh nine. Once more: ${HEAR_ME_LINES[0]}.`);
    await speaker.ends();
    await say(HEAR_ME_LINES[0]);
    await speaker.ends();
    await say("", { candidates: [] });
    expect(speaker.told.at(-1)).toBe(`Not heard. Once more: ${HEAR_ME_LINES[1]}.`);
  });

  it("ends by itself where nobody talks", async () => {
    const { say, passMs, last } = await talking();
    await say("hear me");
    for (let i = 0; i < 4; i++) await passMs(30_000);
    expect(last()?.hearMe).toMatchObject({ running: undefined, profile: undefined });
    expect(last()?.hearMe.notice).toMatch(/^Nothing heard/);
  });
});

describe("the case comes first", () => {
  it("typing goes on with the case and ends it; typed stop only ends it", async () => {
    const { say, talk, session, last, passMs } = await talking();
    await say("hear me");
    await talk.typed("heart rate 90");
    expect(session.state.log.vitals.hr?.entry.value).toBe(90);
    expect(last()?.hearMe.running).toBeUndefined();
    await passMs(2_000);
    await say("hear me");
    expect(last()?.hearMe.running).toBeDefined();
    await talk.typed("stop");
    expect(last()?.hearMe).toMatchObject({ running: undefined, notice: "Hear me stopped. Nothing kept." });
  });

  it("a high alert ends it", async () => {
    const { say, last, passMs, speaker } = await talking();
    await say("map six five");
    await speaker.ends();
    await speaker.ends();
    await say("hear me");
    await passMs(30_000);
    expect(last()?.hearMe.running).toBeUndefined();
    expect(speaker.told.filter((t) => t === "high: Measured MAP sixty five, twenty five under ninety.").length).toBe(2);
  });

  it("what follows it is recorded again", async () => {
    const { say, session, clock, passMs } = await talking();
    await say("hear me");
    await say("stop");
    await passMs(2_000);
    await say("heart rate ninety", { endedAtMs: clock.nowMs() });
    expect(session.state.log.vitals.hr?.entry.value).toBe(90);
  });
});

describe("what was repeated is never a fact", () => {
  it("not when it began before the end, whenever it is decoded", async () => {
    const { say, clock, facts, speaker, talk } = await talking();
    await say("hear me");
    const before = facts();
    talk.hearMe.skip();
    const during = clock.nowMs() + 500;
    await say("heart rate ninety", { endedAtMs: during });
    expect(facts()).toBe(before);
    await speaker.ends();
    expect(speaker.told.at(-1)).toBe("Say again.");
  });

  it("not when a line is repeated just after; said once more it is meant", async () => {
    const { say, facts, speaker, passMs, session } = await talking();
    await say("hear me");
    await say("stop");
    const before = facts();
    await passMs(3_000);
    await say("sats ninety three");
    expect(facts()).toBe(before);
    expect(speaker.told.at(-1)).toMatch(/^That was a line of hear me, not recorded/);
    await passMs(2_000);
    await say("sats ninety three");
    expect(session.state.log.vitals.spo2?.entry.value).toBe(93);
  });

  it("a line said well after the end is a value", async () => {
    const { say, passMs, session } = await talking();
    await say("hear me");
    await say("stop");
    await passMs(AFTERWARDS_MS);
    await say("sats ninety three");
    expect(session.state.log.vitals.spo2?.entry.value).toBe(93);
  });

  it("whatever is said while it runs", async () => {
    const anything = fc.constantFrom(
      ...HEAR_ME_LINES,
      "one ten over sixty",
      "correction ninety",
      "weight eighty",
      "done",
      "next",
      "stand by",
      "disregard",
      "affirm",
      "ninety",
      "dose of ketamine",
      "cause bleed",
      "say again",
    );
    await fc.assert(
      fc.asyncProperty(fc.array(anything, { maxLength: 12 }), async (words) => {
        const { say, facts, talk } = await talking();
        const before = facts();
        talk.hearMe.start();
        for (const said of words) if (talk.hearMe.isRunning) await say(said);
        expect(facts()).toBe(before);
        talk.dispose();
      }),
      { numRuns: 25 },
    );
  });
});

describe("what is kept", () => {
  const profile: VoiceProfile = {
    version: 1,
    madeAtMs: 1,
    speechDb: -30,
    noiseDb: -60,
    verdict: "doubtful",
  };

  it("is there at the next start, and forgotten by voice", async () => {
    const { store, kept } = memory(profile);
    const { last, say, speaker } = await talking(store);
    expect(last()?.hearMe.profile).toEqual(profile);
    await say("forget my voice");
    expect(kept()).toBeUndefined();
    expect(last()?.hearMe).toMatchObject({ profile: undefined, notice: "Voice forgotten." });
    expect(speaker.told).toEqual(["mark heard", "Voice forgotten."]);
  });

  it.each([
    [{ kind: "corrupt", detail: "speechDb" }, /damaged and was ignored/],
    [{ kind: "other-version", version: 9 }, /another version and was ignored/],
    [{ kind: "unavailable", detail: "" }, /could not be read/],
  ] as const)("%o is shown, and nothing is believed", async (error, text) => {
    const { last } = await talking({ ...memory().store, load: () => Promise.resolve(fail(error)) });
    expect(last()?.hearMe.profile).toBeUndefined();
    expect(last()?.hearMe.notice).toMatch(text);
  });

  it("holds for this page where the device cannot store it, and says so", async () => {
    const store = {
      ...memory().store,
      save: () => Promise.resolve(fail({ kind: "write-failed", detail: "" } as const)),
    };
    const { say, last } = await talking(store);
    await say("hear me");
    for (const line of HEAR_ME_LINES) await say(line);
    expect(last()?.hearMe.profile?.verdict).toBe("well");
    expect(last()?.hearMe.notice).toMatch(/could not store/);
  });
});
