import { describe, expect, it } from "vitest";
import { OWN_VOICE_TAIL_MS, WELL_AFTER_MS } from "../../src/app/loudness.ts";
import type { Utterance } from "../../src/app/ports.ts";
import { conversation, settle, type FakeRecogniser } from "./talkFakes.ts";

const SHAPE = { lengthMs: 2_000, levelDb: -20, noiseDb: -70, clipped: false };

async function called() {
  const rig = await conversation();
  rig.talk.setMode("called");
  /** Heard just now. */
  const hears = async (words: string): Promise<void> => {
    const endedAtMs = rig.clock.nowMs();
    const utterance: Utterance = { by: "listener", candidates: [{ words, score: 0 }], shape: SHAPE, endedAtMs };
    rig.recogniser.send({ kind: "heard", utterance: { ...utterance, free: { score: 0, phones: 10 } } });
    await settle();
  };
  return { ...rig, hears };
}

describe("called listening", () => {
  it("tells the recogniser, and does nothing and shows nothing without the call word", async () => {
    const { recogniser, hears, speaker, session, last } = await called();
    expect(recogniser.calls).toContain("mode called");
    await hears("heart rate ninety");
    expect(speaker.told).toEqual([]);
    expect(last()?.lastHeard).toBeUndefined();
    expect(session.state.log.vitals.hr).toBeUndefined();
  });

  it("takes what the call word comes before, and shows it without that word", async () => {
    const { hears, speaker, last } = await called();
    await hears("tragus heart rate ninety");
    expect(speaker.told).toEqual(["mark heard", "Heart rate ninety."]);
    expect(last()?.lastHeard?.words).toBe("heart rate ninety");
  });

  it("answers the call alone with a mark, listens for a while, and shows both", async () => {
    const { hears, speaker, last, passMs } = await called();
    expect(last()?.attentive).toBe(false);
    await hears("tragus");
    expect(speaker.told).toEqual(["mark called"]);
    expect(last()?.attentive).toBe(true);
    await passMs(2_000);
    await hears("heart rate ninety");
    expect(speaker.told.slice(1)).toEqual(["mark heard", "Heart rate ninety."]);
    await speaker.ends();
    expect(last()?.attentive).toBe(false);
    await hears("heart rate fifty");
    expect(speaker.told).toHaveLength(3);
    await hears("tragus");
    await passMs(10_000); // the utterance below lasts under two seconds: it began too late
    expect(last()?.attentive).toBe(false);
    await hears("heart rate fifty");
    expect(speaker.told.slice(3)).toEqual(["mark called"]);
  });

  it("takes the answer to a question, but not long after it was asked", async () => {
    const { hears, speaker, session, passMs } = await called();
    await hears("tragus i c p fifteen");
    speaker.starts();
    await speaker.ends();
    await passMs(4_000);
    await hears("one five");
    expect(session.state.log.vitals.icp?.entry.value).toBe(15);
    await speaker.ends();
    await hears("tragus i c p fifty");
    speaker.starts();
    await speaker.ends();
    await passMs(13_000);
    await hears("five zero");
    expect(session.state.log.vitals.icp?.entry.value).toBe(15);
  });

  it("takes typed lines as they are", async () => {
    const { talk, session } = await called();
    await talk.typed("heart rate 90");
    expect(session.state.log.vitals.hr?.entry.value).toBe(90);
  });
});

describe("keys without a release", () => {
  it("begin and end a held utterance, and end it by themselves when forgotten", async () => {
    const { talk, recogniser, last, passMs } = await conversation();
    const holds = () => recogniser.calls.filter((c) => c.startsWith("hold"));
    talk.press();
    expect(holds()).toEqual([]);
    talk.setMode("held");
    talk.press();
    expect(last()?.holding).toBe(true);
    talk.press();
    expect(last()?.holding).toBe(false);
    talk.press();
    await passMs(20_000);
    expect(holds()).toEqual(["hold true", "hold false", "hold true", "hold false"]);
    expect(last()?.holding).toBe(false);
  });
});

describe("too loud to hear safely", () => {
  type Rig = { readonly recogniser: FakeRecogniser; readonly passMs: (ms: number) => Promise<void> };
  /** The room at one level, for longer than our own voice is left out of it and any dwell. */
  const room = async ({ recogniser, passMs }: Rig, noiseDb: number): Promise<void> => {
    for (let ms = 0; ms <= OWN_VOICE_TAIL_MS + WELL_AFTER_MS; ms += 1_000) {
      recogniser.send({ kind: "level", levelDb: noiseDb, noiseDb, inSpeech: false });
      await passMs(1_000);
    }
  };

  async function loudRoom() {
    const rig = await called();
    rig.talk.setMode("open");
    await rig.hears("heart rate ninety");
    await rig.speaker.ends();
    await room(rig, -15);
    return rig;
  }

  it("is said once with a tone, shown, and every value is asked back", async () => {
    const { hears, speaker, session, last } = await loudRoom();
    const said = "low: Too loud to hear safely. Move the microphone closer, hold to talk, or type.";
    expect(speaker.told.at(-1)).toBe(said);
    expect(last()?.tooLoud).toBe(true);
    await speaker.ends();
    await hears("heart rate fifty five");
    expect(speaker.told.at(-2)).toBe("mark asked");
    expect(session.state.log.vitals.hr?.entry.value).toBe(90);
    expect(speaker.told.filter((t) => t === said)).toHaveLength(1);
  });

  it("ends when the room is well again, and typed lines are taken meanwhile", async () => {
    const rig = await loudRoom();
    const { talk, speaker, session, last } = rig;
    await speaker.ends();
    await talk.typed("heart rate 85");
    expect(session.state.log.vitals.hr?.entry.value).toBe(85);
    await speaker.ends();
    await room(rig, -60);
    expect(speaker.told.at(-1)).toBe("Hearing again.");
    expect(last()?.tooLoud).toBe(false);
  });

  it("never cuts off a high alert, which comes first", async () => {
    const rig = await called();
    const { hears, speaker } = rig;
    await hears("tragus map six five");
    expect(speaker.told.at(-1)).toMatch(/^high: /);
    await room(rig, -15);
    expect(speaker.told.at(-1)).toMatch(/^high: /);
    expect(speaker.told).not.toContain("silence");
  });
});
