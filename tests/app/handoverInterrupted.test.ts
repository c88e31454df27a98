import { describe, expect, it } from "vitest";
import { createMemoryFactStore } from "../../src/adapters/storage/memoryFactStore.ts";
import { REPLY_KEEPS_MS } from "../../src/app/voiceQueue.ts";
import { fail } from "../../src/core/result.ts";
import type { Fact } from "../../src/log/facts.ts";
import { conversation, settle } from "./talkFakes.ts";

/** Invented. Nothing of it raises an alert. */
const CASE = [
  "thirty four year old man",
  "cause head injury",
  "weight eighty",
  "affirm",
  "both pupils three brisk",
  "eyes four verbal five motor six",
  "one thirty over eighty",
  "sats ninety eight",
  "noradrenaline four milligrams in two fifty",
  "affirm",
  "start noradrenaline at point one",
  "affirm",
];

async function begin(lines: readonly string[] = CASE) {
  const store = createMemoryFactStore();
  const rig = await conversation(store);
  const { talk, speaker, recogniser } = rig;
  const finish = async (): Promise<void> => {
    for (let before = -1; before !== speaker.told.length;) {
      before = speaker.told.length;
      await speaker.ends();
    }
  };
  for (const line of lines) {
    await talk.typed(line);
    await finish();
  }
  let from = speaker.told.length;
  /** What was begun since this was asked last: words alone. */
  const spoken = (): readonly string[] => {
    const all = speaker.told.slice(from).filter((t) => t !== "" && t !== "silence" && !t.startsWith("mark"));
    from = speaker.told.length;
    return all;
  };
  /** The words of now begin to sound; the last of them to be heard whole is told. */
  const sounds = async (parts: number): Promise<void> => {
    for (let i = 0; i < parts; i++) {
      speaker.starts();
      await speaker.ends();
    }
    speaker.starts();
    await settle();
  };
  const speaks = async (): Promise<void> => {
    recogniser.send({ kind: "speechStarted", atMs: 0 });
    await settle();
  };
  /** Somebody says this; our voice was talked over. */
  const says = async (words: string): Promise<void> => {
    await speaks();
    recogniser.send({ kind: "speechEnded", atMs: 0 });
    recogniser.hears(words);
    await settle();
  };
  /** It sounds to its end, whatever waits. */
  const toEnd = async (): Promise<readonly string[]> => {
    for (let before = -1; before !== speaker.told.length;) {
      before = speaker.told.length;
      speaker.starts();
      await settle();
      await speaker.ends();
    }
    return spoken();
  };
  const facts = async (): Promise<readonly Fact[]> => {
    const loaded = await store.load();
    return loaded.ok ? loaded.value : [];
  };
  return { ...rig, store, spoken, sounds, speaks, says, toEnd, facts };
}

/** The sentences of a handover that nobody disturbs. */
async function undisturbed(lines?: readonly string[]): Promise<readonly string[]> {
  const { says, toEnd } = await begin(lines);
  await says("handover");
  return toEnd();
}

describe("a handover that is cut off", () => {
  it("is silent at once where somebody speaks, and nothing of it follows while he does", async () => {
    const { says, sounds, speaks, speaker, passMs } = await begin();
    await says("handover");
    await sounds(1);
    const before = speaker.told.length;
    await speaks();
    expect(speaker.told.slice(before)).toEqual(["silence"]);
    await passMs(5000);
    expect(speaker.told.slice(before)).toEqual(["silence"]);
  });

  it.each([0, 1, 2, 3, 4, 5])("goes on with the very sentence, number %i, in which it was cut off", async (n) => {
    const whole = await undisturbed();
    const { says, sounds, speaks, spoken, toEnd } = await begin();
    await says("handover");
    await sounds(n);
    await speaks();
    expect(spoken().at(-1)).toBe(whole[n]);
    await says("go on");
    const [lead, first, ...rest] = await toEnd();
    expect(lead).toBe("Going on.");
    expect(topicOf(first)).toBe(topicOf(whole[n]));
    expect(rest).toHaveLength(whole.length - n - 1);
  });

  it("goes on with the next sentence where it was stopped between two", async () => {
    const whole = await undisturbed();
    const { says, speaker, spoken, toEnd } = await begin();
    await says("handover");
    speaker.starts();
    await settle();
    await speaker.ends();
    await says("go on");
    spoken();
    expect(topicOf((await toEnd())[0])).toBe(topicOf(whole[1]));
  });

  it("is not gone on with past the sentence that sounds where go on is typed and nobody has spoken", async () => {
    const whole = await undisturbed();
    const { talk, says, sounds, spoken, toEnd } = await begin();
    await says("handover");
    await sounds(2);
    spoken();
    await talk.typed("go on");
    expect(topicOf((await toEnd())[1])).toBe(topicOf(whole[2]));
  });

  it("can be cut off and gone on with again and again, and nothing is lost", async () => {
    const whole = await undisturbed();
    const { says, sounds, speaks, toEnd, spoken } = await begin();
    await says("handover");
    await sounds(1);
    const heard = [whole[0]];
    for (let i = 0; i < 3; i++) {
      await speaks();
      await says("go on");
      spoken();
      await sounds(1);
      heard.push(whole[i + 1]);
      await speaks();
    }
    await says("go on");
    const rest = (await toEnd()).map((text) => topicOf(text));
    const all = [...heard.map((text) => topicOf(text)), ...rest];
    expect(whole.map((text) => topicOf(text)).filter((topic) => !all.includes(topic))).toEqual([]);
  });

  it("goes on by itself with that sentence where it was a sound without words, or talk that is not for it", async () => {
    const whole = await undisturbed();
    for (const sound of ["cough", "talk"]) {
      const { recogniser, says, sounds, speaks, spoken, passMs } = await begin();
      await says("handover");
      await sounds(2);
      spoken();
      await speaks();
      recogniser.send({ kind: "speechEnded", atMs: 0 });
      if (sound === "talk") recogniser.hears("the weather is nice");
      await passMs(600);
      expect(spoken(), sound).toEqual([whole[2]]);
    }
  });

  it("does not go on by itself after long talk: its ages are no longer those of then", async () => {
    const { recogniser, says, sounds, speaks, spoken, toEnd, passMs } = await begin();
    await says("handover");
    await sounds(2);
    await speaks();
    spoken();
    await passMs(REPLY_KEEPS_MS + 1000);
    recogniser.send({ kind: "speechEnded", atMs: 0 });
    await passMs(600);
    expect(spoken()).toEqual([]);
    await says("go on");
    expect((await toEnd())[0]).toBe("Going on.");
  });

  it("leaves off for good when it was talked over three times, and can still be gone on with", async () => {
    const whole = await undisturbed();
    const { recogniser, speaker, says, sounds, speaks, spoken, toEnd, passMs } = await begin();
    await says("handover");
    await sounds(1);
    for (let i = 0; i < 3; i++) {
      spoken();
      await speaks();
      recogniser.send({ kind: "speechEnded", atMs: 0 });
      await passMs(600);
      speaker.starts();
      await settle();
    }
    expect(spoken()).toEqual([]);
    await says("go on");
    expect(topicOf((await toEnd())[1])).toBe(topicOf(whole[1]));
  });
});

describe("go on", () => {
  it("says that there is nothing where no handover was begun", async () => {
    const { says, toEnd } = await begin();
    await says("go on");
    expect(await toEnd()).toEqual(["No handover was begun."]);
  });

  it("says so where all was said, however often it is asked", async () => {
    const { says, toEnd } = await begin(["one thirty over eighty"]);
    await says("handover all");
    await toEnd();
    for (let i = 0; i < 2; i++) {
      await says("go on");
      expect(await toEnd()).toEqual(["That was all."]);
    }
  });

  it.each(["status", "clocks", "what's my margin", "say again", "why", "which case", "sats ninety seven", "stand by"])(
    "still works after: %s",
    async (other) => {
      const whole = await undisturbed();
      const { says, sounds, spoken, toEnd } = await begin();
      await says("handover");
      await sounds(3);
      await says(other);
      await toEnd();
      await says("go on");
      spoken();
      const rest = (await toEnd()).map((text) => topicOf(text));
      // "Say again" has said the sentence that was cut off.
      expect(rest[0]).toBe(topicOf(whole[other === "say again" ? 4 : 3]));
    },
  );

  it("tells what did not fit, and only that", async () => {
    const { says, toEnd } = await begin();
    await says("handover short");
    const short = await toEnd();
    expect(short.at(-1)).toBe("More: say go on.");
    await says("go on");
    const rest = await toEnd();
    expect(rest[0]).toBe("Going on.");
    expect(rest.join(" ")).toContain("Noradrenaline");
    expect(rest.join(" ")).not.toContain("Lowest MAP");
    await says("go on");
    expect(await toEnd()).toEqual(["That was all."]);
  });

  it("begins anew with handover, from the start", async () => {
    const whole = await undisturbed();
    const { says, sounds, spoken, toEnd } = await begin();
    await says("handover");
    await sounds(4);
    spoken();
    await says("handover");
    expect(await toEnd()).toEqual(whole);
  });
});

describe("what was said meanwhile", () => {
  it("is recorded and read back, and the old number is not said any more", async () => {
    const { says, sounds, spoken, toEnd, session } = await begin();
    await says("handover all");
    await sounds(1);
    spoken();
    await says("sats ninety one");
    expect(session.state.log.vitals.spo2?.entry.value).toBe(91);
    expect((await toEnd()).join(" ")).toContain("Sats ninety one.");
    await says("go on");
    const rest = (await toEnd()).join(" ");
    expect(rest).toMatch(/sats ninety one, just now/iu);
    expect(rest).not.toContain("ninety eight");
  });

  it("an infusion that was begun after its place had passed is told at the end, and one that was stopped is not", async () => {
    const { says, sounds, toEnd } = await begin();
    const whole = await undisturbed();
    await says("handover all");
    await sounds(whole.length);
    await says("start phenylephrine at fifty micrograms per minute");
    await says("affirm");
    await says("stop noradrenaline");
    await says("affirm");
    await toEnd();
    await says("go on");
    const first = (await toEnd()).join(" ");
    await says("go on");
    const all = `${first} ${(await toEnd()).join(" ")}`;
    expect(all).toMatch(/phenylephrine fifty micrograms per minute/iu);
    expect(all).not.toMatch(/noradrenaline zero/iu);
  });

  it("ages are those of the moment at which it is gone on with", async () => {
    const { says, sounds, speaks, toEnd, passMs, recogniser } = await begin();
    await says("handover all");
    await sounds(1);
    await speaks();
    recogniser.send({ kind: "speechEnded", atMs: 0 });
    await says("stand by");
    await toEnd();
    await passMs(240_000);
    await says("go on");
    const rest = (await toEnd()).join(" ");
    expect(rest).toMatch(/sats ninety eight, taken (?:four|five) minutes ago/iu);
    expect(rest).not.toContain("just now");
  });

  it("what is told late in a long handover is as old as it will be by then", async () => {
    const { says, toEnd } = await begin();
    await says("handover all");
    const parts = await toEnd();
    expect(parts.find((p) => p.includes("pupils"))).toContain("just now");
    expect(parts.slice(-3).join(" ")).not.toContain("just now");
  });
});

describe("alerts in the midst of a handover", () => {
  /** MAP is low, and acknowledged by nobody: it is said again by its clock. */
  const LOW = [...CASE, "map 65"];

  it("a high one cuts in at once; the sentence is then said again, and the rest follows", async () => {
    const { says, sounds, spoken, toEnd, passMs, session } = await begin(LOW);
    await passMs(28_000);
    await says("handover");
    const whole = session.state.handover?.parts.map(({ text }) => text) ?? [];
    expect(whole.length).toBeGreaterThan(6);
    await sounds(2);
    spoken();
    await passMs(2500);
    const after = await toEnd();
    expect(after[0]).toMatch(/^high: /u);
    expect(after.slice(1)).toEqual(whole.slice(2));
  });

  it("can be gone on with where it was stopped while the alert sounded", async () => {
    const whole = await undisturbed(LOW);
    const { says, sounds, spoken, toEnd, passMs, speaker } = await begin(LOW);
    await passMs(28_000);
    await says("handover");
    await sounds(2);
    await passMs(2500);
    speaker.starts();
    await settle();
    await says("heard");
    await toEnd();
    await says("go on");
    spoken();
    expect(topicOf((await toEnd())[0])).toBe(topicOf(whole[2]));
  });

  it.each([
    ["medium", "comes between two sentences", 1],
    ["low", "waits for the end", Infinity],
  ] as const)("a %s one does not cut in: it %s", async (priority, _how, place) => {
    const { talk, says, sounds, spoken, toEnd, speaker } = await begin();
    await says("handover");
    await sounds(1);
    spoken();
    const before = speaker.told.length;
    talk.notice({ shown: {}, said: [{ text: "An alert.", priority, alertId: "x" }] });
    expect(speaker.told.slice(before)).toEqual([]);
    const after = await toEnd();
    expect(after.indexOf(`${priority}: An alert.`)).toBe(place === 1 ? 0 : after.length - 1);
  });

  it("is not ended by a list that is taken up again after an alert", async () => {
    const { talk, says, sounds, spoken, toEnd, passMs, session } = await begin(LOW);
    await passMs(20_000);
    await talk.typed("read the list");
    await passMs(8_000);
    await says("handover");
    const whole = session.state.handover?.parts.map(({ text }) => text) ?? [];
    await sounds(2);
    spoken();
    await passMs(2500);
    const after = await toEnd();
    expect(after[0]).toMatch(/^high: /u);
    expect(after.slice(1, 1 + whole.length - 2)).toEqual(whole.slice(2));
    expect(after.filter((text) => text.startsWith("Back to "))).not.toEqual([]);
  });
});

describe("another case", () => {
  it.each(["new case", "erase this case"])("%s: the handover of the last one is not gone on with", async (words) => {
    const { talk, says, sounds, spoken, toEnd, session, facts } = await begin();
    const { label } = session.state.log;
    await says("handover");
    await sounds(2);
    await talk.typed(words);
    await talk.typed(words === "new case" ? "affirm" : `erase ${label}`);
    expect(session.state.handover).toBeUndefined();
    spoken();
    const rest = await toEnd();
    expect(rest.join(" ")).not.toMatch(/noradrenaline|head injury|ninety/iu);
    await says("go on");
    expect(await toEnd()).toEqual(["No handover was begun."]);
    // What was cut off belongs to the record of the old case and to no other.
    const started = new Set((await facts()).flatMap((f) => (f.type === "speech.started" ? [f.id] : [])));
    for (const fact of await facts()) if (fact.type === "speech.cut") expect(started).toContain(fact.startedId);
  });

  it("a second tab says that it only shows the case", async () => {
    const { facts } = await begin();
    const kept = await facts();
    const otherTab = async () => fail({ kind: "other-tab", facts: kept } as const);
    const { speaker, talk } = await conversation({ load: otherTab, append: otherTab, erase: otherTab });
    for (const words of ["handover", "go on"]) {
      const before = speaker.told.length;
      await talk.typed(words);
      await speaker.ends();
      const told = speaker.told.slice(before).join(" ");
      expect(told).toContain("Read only: another tab keeps this case.");
      expect(told).not.toMatch(/lowest|noradrenaline/iu);
    }
  });
});

/** What a sentence is of: after "go on" it is said in full, with its letter, and with the numbers of then. */
const topicOf = (sentence = ""): string => {
  const bare = sentence.replace(/^[A-Z][a-z]+: /u, "");
  return bare
    .toLowerCase()
    .split(/[ ,.]+/u)
    .slice(0, 2)
    .join(" ");
};
