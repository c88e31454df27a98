import { describe, expect, it } from "vitest";
import { createMemoryFactStore } from "../../src/adapters/storage/memoryFactStore.ts";
import { OWN_VOICE_TAIL_MS } from "../../src/app/loudness.ts";
import type { HearingEvent } from "../../src/app/ports.ts";
import type { Fact } from "../../src/log/facts.ts";
import { fail } from "../../src/core/result.ts";
import { conversation, settle } from "./talkFakes.ts";

const MAP_LOW = "high: Measured MAP sixty five, twenty five under ninety.";

async function recorded() {
  const store = createMemoryFactStore();
  const rig = await conversation(store);
  const speech = async (): Promise<readonly (readonly [string, number, string])[]> => {
    await settle();
    const facts = await store.load();
    const all: readonly Fact[] = facts.ok ? facts.value : [];
    return all.flatMap((f) => {
      if (f.type === "speech.started") return [[f.text, f.atMs, f.alertId ?? f.priority] as const];
      if (f.type !== "speech.cut") return [];
      const cut = all.find((s) => s.id === f.startedId);
      return [[`cut ${cut?.type === "speech.started" ? cut.text : "?"}`, f.atMs, ""] as const];
    });
  };
  return { ...rig, speech };
}

describe("what was said, in the record", () => {
  it("is there from the moment at which the words begin, with its time and its alert", async () => {
    const { talk, speaker, speech, clock, passMs } = await recorded();
    await talk.typed("map 65");
    const toldAtMs = clock.nowMs();
    expect(await speech()).toEqual([]);
    await passMs(300);
    speaker.starts();
    expect(await speech()).toEqual([["Measured MAP sixty five, twenty five under ninety.", toldAtMs + 300, "mapLow"]]);
    await speaker.ends();
    speaker.starts();
    expect((await speech()).slice(1)).toEqual([["MAP sixty five.", toldAtMs + 300, "none"]]);
  });

  it("says so where it was cut off, by the user or by something more urgent", async () => {
    const { talk, recogniser, speaker, speech, clock } = await recorded();
    await talk.typed("status");
    speaker.starts();
    await settle();
    recogniser.send({ kind: "speechStarted", atMs: 0 });
    const [said, cut] = await speech();
    expect(cut).toEqual([`cut ${said?.[0]}`, clock.nowMs(), ""]);
  });

  it("holds nothing of a voice that failed, of a mark, and of what was cancelled before its words", async () => {
    const { talk, speaker, speech } = await recorded();
    speaker.failsToSay = true;
    await talk.typed("map 65");
    speaker.failsToSay = false;
    await talk.typed("status");
    await talk.typed("heart rate 90");
    expect(await speech()).toEqual([]);
    expect(speaker.told).toContain("mark heard");
  });

  it("does not wait for the store", async () => {
    const store = createMemoryFactStore();
    let waiting = false;
    const slow = {
      load: () => store.load(),
      erase: (caseId: string) => store.erase(caseId),
      append: (facts: readonly Fact[]) => (waiting ? new Promise<never>(() => undefined) : store.append(facts)),
    };
    const { talk, speaker, last } = await conversation(slow);
    await talk.typed("map 65");
    waiting = true;
    speaker.starts();
    await speaker.ends();
    speaker.starts();
    expect(last()?.lastSpoken).toBe("MAP sixty five.");
  });
});

describe("an alert that cuts in on a challenge", () => {
  it.each([
    ["while a list is read: the step is named", "killer items only", /^Back to /u],
    ["called alone: it is said again", "next", /^Bleeding stopped/u],
  ])("is followed by the step that waits, %s", async (_name, command, resumption) => {
    const { talk, speaker, session, passMs } = await conversation();
    await talk.typed("map 65");
    await speaker.ends();
    await speaker.ends();
    await passMs(28_000);
    await talk.typed(command);
    speaker.starts();
    const step = session.state.log.calledStepId;
    expect(step).toBeDefined();
    await passMs(2_500);
    expect(speaker.told.slice(-2)).toEqual(["silence", expect.stringContaining("high: Measured MAP sixty five")]);
    await speaker.ends();
    expect(speaker.told.at(-1)).toMatch(resumption);
    expect(session.state.log.calledStepId).toBe(step);
    await speaker.ends();
    const before = speaker.told.length;
    await passMs(2_000);
    expect(speaker.told.length).toBe(before);
  });

  it("is followed by the question that it cut off, which still waits", async () => {
    const { talk, speaker, session, passMs } = await conversation();
    await talk.typed("map 65");
    await speaker.ends();
    await speaker.ends();
    await passMs(28_000);
    await talk.typed("icp fifteen");
    const question = speaker.told.at(-1);
    speaker.starts();
    await passMs(2_500);
    expect(speaker.told.at(-1)).toContain("high: Measured MAP sixty five");
    await speaker.ends();
    expect(speaker.told.at(-1)).toBe(question);
    await talk.typed("one five");
    expect(session.state.log.vitals.icp?.entry.value).toBe(15);
    await speaker.ends();
    await speaker.ends();
    expect(speaker.told.filter((t) => t === question).length).toBe(2);
  });
});

describe("numbers that have changed", () => {
  it("are not said any more: what waited while the user gave a newer one is not begun", async () => {
    const { recogniser, speaker, talk } = await conversation();
    await talk.typed("map 65");
    recogniser.send({ kind: "speechStarted", atMs: 0 });
    const before = speaker.told.length;
    recogniser.send({ kind: "speechEnded", atMs: 0 });
    recogniser.hears("map seven zero");
    await settle();
    await speaker.ends();
    const told = speaker.told.slice(before).filter((t) => !t.startsWith("mark"));
    expect(told.join(" ")).toMatch(/seventy/u);
    expect(told.join(" ")).not.toContain("MAP sixty five.");
  });
});

describe("how loud and how fast", () => {
  const level = (noiseDb: number): HearingEvent => ({ kind: "level", levelDb: noiseDb, noiseDb, inSpeech: false });

  it("follows the noise of the room, and never our own voice in it", async () => {
    const { recogniser, speaker, talk, passMs } = await conversation();
    recogniser.send(level(-60));
    await talk.typed("status");
    recogniser.send(level(-50));
    await talk.typed("status");
    expect(speaker.manners).toEqual([
      [1, 0],
      [1, 7],
    ]);
    speaker.starts();
    recogniser.send(level(-20));
    await speaker.ends();
    await passMs(OWN_VOICE_TAIL_MS - 500);
    recogniser.send(level(-25));
    await talk.typed("status");
    expect(speaker.manners.at(-1)).toEqual([1, 7]);
    await passMs(OWN_VOICE_TAIL_MS);
    recogniser.send(level(-60));
    await talk.typed("status");
    expect(speaker.manners.at(-1)).toEqual([1, 0]);
  });
});

describe("a voice that fails", () => {
  it("tells it once, by a mark and on the screen, shows every reply, and shows once that it works again", async () => {
    const { speaker, talk, last } = await conversation();
    speaker.failsToSay = true;
    await talk.typed("heart rate 90");
    await talk.typed("sats 96");
    expect(speaker.told.filter((t) => t === "mark mute")).toHaveLength(1);
    expect(last()).toMatchObject({ voiceText: "Voice stopped. Read the screen.", lastSpoken: "Sats ninety six." });
    speaker.failsToSay = false;
    const say = async () => {
      await talk.typed("status");
      speaker.starts();
      await speaker.ends();
    };
    await say();
    expect(last()?.voiceText).toBe("Voice works again.");
    await say();
    expect(last()?.voiceText).toBe("");
    speaker.failsToSay = true;
    await talk.typed("heart rate 91");
    expect(speaker.told.filter((t) => t === "mark mute")).toHaveLength(2);
  });

  it("hands alerts on with their tone all the same, and a tone alone does not count as a voice that works", async () => {
    const { speaker, talk, last } = await conversation();
    speaker.failsToSay = true;
    await talk.typed("map 65");
    expect(speaker.told).toContain(MAP_LOW);
    expect(last()?.voiceText).toBe("Voice stopped. Read the screen.");
  });

  it("makes no mark where sound is blocked as a whole, and shows it", async () => {
    const { speaker, talk, last } = await conversation();
    speaker.failsToSay = true;
    speaker.fails = { kind: "audio-blocked" };
    await talk.typed("heart rate 90");
    await talk.typed("sats 96");
    expect(speaker.told).not.toContain("mark mute");
    expect(last()).toMatchObject({
      voiceText: "Sound is blocked until the page is touched once. Read the screen.",
      lastSpoken: "Sats ninety six.",
    });
  });

  it("is told when it cannot even be loaded, and not a second time by its first words", async () => {
    const { speaker, talk, last } = await conversation();
    speaker.warm = fail({ kind: "load-failed", asset: "voice/flite.wasm", detail: "x" });
    speaker.failsToSay = true;
    await talk.listen();
    expect(last()?.voiceText).toMatch(/did not load/u);
    await talk.typed("heart rate 90");
    expect(speaker.told.filter((t) => t === "mark mute")).toHaveLength(1);
  });
});

describe("a microphone that fails", () => {
  it.each([
    [{ kind: "microphone-lost" }, true],
    [{ kind: "microphone-refused" }, true],
    [{ kind: "microphone-silent", forMs: 3000 }, true],
    [{ kind: "worker-died", detail: "x" }, true],
    [{ kind: "voice-faint" }, false],
  ] as const)("is a condition for an alert until it works again: %o %s", async (error, isLost) => {
    const { recogniser, session, clock } = await conversation();
    recogniser.send({ kind: "fault", error });
    expect(session.faults.map(({ kind, sinceMs }) => [kind, sinceMs])).toEqual(
      isLost ? [["microphoneLost", clock.nowMs()]] : [],
    );
    recogniser.send({ kind: "stopped" });
    expect(session.faults).toHaveLength(isLost ? 1 : 0);
    recogniser.send({ kind: "recovered" });
    expect(session.faults).toEqual([]);
  });

  it("is none where the user has switched listening off", async () => {
    const { recogniser, session, talk } = await conversation();
    recogniser.send({ kind: "fault", error: { kind: "microphone-lost" } });
    talk.stopListening();
    expect(session.faults).toEqual([]);
  });
});
