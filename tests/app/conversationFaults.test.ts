import { describe, expect, it } from "vitest";
import type { FactStore, StoreError } from "../../src/app/ports.ts";
import { fail, ok } from "../../src/core/result.ts";
import { conversation, FakeRecogniser, settle } from "./talkFakes.ts";

const store = (loads: StoreError | undefined): FactStore & { works: boolean } => ({
  works: true,
  erase: () => Promise.resolve(ok(undefined)),
  load: () => Promise.resolve(loads === undefined ? ok([]) : fail(loads)),
  append() {
    return Promise.resolve(this.works ? ok(undefined) : fail({ kind: "quota-exceeded" }));
  },
});

describe("a record that cannot be kept or read", () => {
  it.each([
    [{ kind: "unavailable", detail: "x" }, "Record not saved: storage is not available. Write it down."],
    [
      { kind: "corrupt", detail: "x", readable: 0, facts: [] },
      "Part of the record could not be read. Check it against your notes.",
    ],
  ] as const)("is said at the start: %o", async (error, text) => {
    const { speaker, last } = await conversation(store(error));
    expect(speaker.told).toEqual([`high: ${text}`]);
    expect(last()?.saveFailed).toBe(true);
  });

  it("is shown as saved again once a later moment has written what was waiting", async () => {
    const kept = store(undefined);
    const { recogniser, last, passMs } = await conversation(kept);
    kept.works = false;
    recogniser.hears("heart rate ninety");
    await settle();
    expect(last()?.saveFailed).toBe(true);
    kept.works = true;
    await passMs(500);
    expect(last()).toMatchObject({ saveFailed: false, saveText: "Saved" });
  });

  it("never calls what it could not write recorded, by sign or sound, and names it", async () => {
    const kept = store(undefined);
    const { recogniser, speaker, last, passMs } = await conversation(kept);
    kept.works = false;
    recogniser.hears("heart rate ninety");
    await settle();
    expect(last()?.lastHeard).toEqual({ words: "heart rate ninety", outcome: "not saved" });
    expect(speaker.told).not.toContain("mark heard");
    for (const words of ["sats ninety six", "map ninety five"]) {
      recogniser.hears(words);
      await settle();
    }
    expect(last()?.saveText).toBe("Not saved: “heart rate ninety”, “sats ninety six”, “map ninety five”");
    recogniser.hears("temperature thirty seven");
    await settle();
    expect(last()?.saveText).toBe("Not saved: 4 entries, last “temperature thirty seven”");
    kept.works = true;
    await passMs(500);
    expect(last()?.lastHeard).toEqual({ words: "temperature thirty seven", outcome: "recorded" });
  });
});

describe("a talker who is not heard any more", () => {
  it.each([
    ["the recogniser stops", { kind: "stopped" }],
    ["the recogniser fails", { kind: "fault", error: { kind: "worker-died", detail: "x" } }],
  ] as const)("does not keep our voice waiting for ever when %s", async (_name, event) => {
    const { recogniser, speaker, talk } = await conversation();
    recogniser.send({ kind: "speechStarted", atMs: 0 });
    recogniser.send(event);
    await settle();
    await speaker.ends();
    await talk.typed("heart rate 90");
    expect(speaker.told.at(-1)).toBe("Heart rate ninety.");
  });

  it("nor when another engine takes over; and the new one knows that our voice sounds", async () => {
    const { recogniser, speaker, talk } = await conversation();
    await talk.typed("heart rate 90");
    speaker.starts();
    const fresh = new FakeRecogniser();
    await talk.replaceRecogniser(fresh);
    expect(fresh.calls).toContain("speaking true");
    await speaker.ends();
    expect(fresh.calls.at(-1)).toBe("speaking false");
    fresh.send({ kind: "speechStarted", atMs: 0 });
    await talk.replaceRecogniser(new FakeRecogniser());
    await talk.typed("sats 96");
    expect(speaker.told.at(-1)).toBe("Sats ninety six.");
    expect(recogniser.calls.at(-1)).toBe("dispose");
  });
});

describe("a fault that has passed", () => {
  it("is not said any more", async () => {
    const { recogniser, speaker, talk } = await conversation();
    await talk.typed("map 65");
    recogniser.send({ kind: "fault", error: { kind: "worker-died", detail: "x" } });
    recogniser.send({ kind: "recovered" });
    await speaker.ends();
    await speaker.ends();
    expect(speaker.told.filter((t) => t.includes("Listening stopped"))).toEqual([]);
  });
});
