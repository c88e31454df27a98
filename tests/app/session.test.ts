import { describe, expect, it } from "vitest";
import type { FactStore, StoreError, Utterance } from "../../src/app/ports.ts";
import { Session } from "../../src/app/session.ts";
import { fail, ok, type Result } from "../../src/core/result.ts";
import type { Fact } from "../../src/log/facts.ts";
import { reduceFacts } from "../../src/log/reduceFact.ts";
import { testContext } from "./playCase.ts";

const context = testContext();
const T0 = 1_800_000_000_000;
const EXAMPLE = { text: "Example protocol, not approved for patients.", priority: "none", alertId: "protocol" };
const typed = (words: string): Utterance => ({ by: "typed", candidates: [{ words, score: 0 }], endedAtMs: T0 });

/** A store on a leash: it answers when it is told to, and as it is told to. */
class FakeStore implements FactStore {
  readonly durable: Fact[] = [];
  readonly asked: (readonly Fact[])[] = [];
  next: "keep" | "wait" | "fail" | "throw" | "reject" = "keep";
  loaded: Result<readonly Fact[], StoreError> | "throw" = ok([]);
  #release: (() => void) | undefined;

  load(): Promise<Result<readonly Fact[], StoreError>> {
    if (this.loaded === "throw") throw new Error("no database");
    return Promise.resolve(this.loaded);
  }

  async append(facts: readonly Fact[]): Promise<Result<void, StoreError>> {
    this.asked.push(facts);
    if (this.next === "throw") throw new Error("broken");
    if (this.next === "reject") return Promise.reject(new Error("broken later"));
    if (this.next === "fail") return fail({ kind: "quota-exceeded" });
    if (this.next === "wait") await new Promise<void>((resolve) => (this.#release = resolve));
    this.durable.push(...facts);
    return ok(undefined);
  }

  erase(): Promise<Result<void, StoreError>> {
    this.durable.length = 0;
    return Promise.resolve(ok(undefined));
  }

  release(): void {
    this.next = "keep";
    this.#release?.();
  }
}

async function opened(store = new FakeStore()) {
  const session = new Session({ context, store, newCaseId: () => "c" });
  const start = await session.start(T0);
  return { session, store, start };
}

const types = (facts: readonly Fact[]): readonly string[] =>
  facts.map((f) => (f.type === "vital.recorded" ? `${f.code} ${f.value}` : f.type));
const settle = () => new Promise((resolve) => setTimeout(resolve, 5));

describe("a case that is kept", () => {
  it("opens a new case durably", async () => {
    const { store, start } = await opened();
    expect(start).toEqual({ kind: "saved", resumed: false, announcements: [EXAMPLE] });
    expect(types(store.durable)).toEqual(["case.opened"]);
  });

  it("reports an utterance only once its facts are durable, and shows its state only then", async () => {
    const { session, store } = await opened();
    store.next = "wait";
    let reported = false;
    const report = session.hear(typed("heart rate ninety"), T0).then((r) => ((reported = true), r));
    await settle();
    expect([reported, session.state.log.vitals.hr]).toEqual([false, undefined]);
    store.release();
    expect((await report).saved).toEqual({ kind: "saved" });
    expect(types(store.durable)).toEqual(["case.opened", "hr 90"]);
    expect(session.state.log.vitals.hr?.entry.value).toBe(90);
  });

  it("takes inputs in the order in which they came, each seeing what the one before it left", async () => {
    const { session, store } = await opened();
    store.next = "wait";
    const first = session.hear(typed("icp fifteen"), T0);
    const second = session.hear(typed("one five"), T0 + 1);
    const third = session.tick(T0 + 2);
    await settle();
    store.release();
    const reports = await Promise.all([first, second, third]);
    expect(reports.map((r) => r.answer?.outcome)).toEqual(["asked", "recorded", undefined]);
    expect(types(store.durable)).toEqual(["case.opened", "question.asked", "question.closed", "icp 15"]);
  });

  it("writes nothing where nothing happened", async () => {
    const { session, store } = await opened();
    await session.hear(typed("the weather is nice"), T0);
    await session.tick(T0 + 1000);
    expect(store.asked.length).toBe(1);
  });
});

describe("a write that fails", () => {
  it.each(["fail", "throw", "reject"] as const)("loses nothing when the store answers with %s", async (how) => {
    const { session, store } = await opened();
    store.next = how;
    const reports = [
      await session.hear(typed("heart rate ninety"), T0),
      await session.hear(typed("sats ninety six"), T0 + 1),
    ];
    expect(reports.map((r) => r.saved.kind)).toEqual(["failed", "failed"]);
    expect(reports.map((r) => r.answer?.outcome)).toEqual(["recorded", "recorded"]);
    store.next = "keep";
    expect((await session.tick(T0 + 500)).saved).toEqual({ kind: "saved" });
    // That it could not be written is an alert, whose facts wait with the others.
    const alert = ["alert.raised", "alert.announced"];
    expect(types(store.durable)).toEqual(["case.opened", "hr 90", ...alert, "spo2 96"]);
    await session.hear(typed("heart rate eighty five"), T0 + 600);
    expect(types(store.durable).slice(5)).toEqual(["hr 85", "alert.cleared"]);
  });

  it("keeps even the opening of the case for the next write", async () => {
    const store = new FakeStore();
    store.next = "throw";
    const { session, start } = await opened(store);
    expect(start.kind).toBe("failed");
    store.next = "keep";
    await session.hear(typed("heart rate ninety"), T0);
    expect(types(store.durable)).toEqual(["case.opened", "hr 90", "alert.raised", "alert.announced"]);
  });
});

describe("a case that is resumed", () => {
  async function storedCase(): Promise<readonly Fact[]> {
    const { session, store } = await opened();
    for (const said of ["120/80", "icp fifteen", "heart rate ninety"]) await session.hear(typed(said), T0 + 1000);
    return store.durable;
  }

  it("is where it was: values, and the question that waits", async () => {
    const store = new FakeStore();
    const facts = await storedCase();
    store.loaded = ok(facts);
    const { session, start } = await opened(store);
    expect(start).toEqual({ kind: "saved", resumed: true, announcements: [EXAMPLE] });
    expect(session.state.log).toEqual(reduceFacts(facts));
    expect((await session.hear(typed("one five"), T0 + 2000)).answer?.outcome).toBe("recorded");
    expect(types(store.durable)).toEqual(["question.closed", "icp 15"]);
  });

  it("goes on with what can be read, says so, and gives no id a second time", async () => {
    const facts = await storedCase();
    const readable = facts.filter((_, i) => i !== 1);
    const store = new FakeStore();
    store.loaded = fail({ kind: "corrupt", detail: "fact 1", readable: readable.length, facts: readable });
    const { session, start } = await opened(store);
    expect([start.kind, start.resumed]).toEqual(["failed", true]);
    await session.hear(typed("sats ninety six"), T0 + 2000);
    const ids = [...facts, ...store.durable].map((f) => f.id);
    expect(new Set(ids).size).toBe(ids.length);
    expect(types(store.durable)).toEqual(["spo2 96", "alert.raised", "alert.announced"]);
  });

  it.each([["unavailable"], ["throw"]] as const)("opens a case that works when the store is %s", async (how) => {
    const store = new FakeStore();
    store.loaded = how === "throw" ? "throw" : fail({ kind: "unavailable", detail: "private window" });
    const { session, start } = await opened(store);
    expect([start.kind, start.resumed]).toEqual(["failed", false]);
    expect((await session.hear(typed("heart rate ninety"), T0)).answer?.outcome).toBe("recorded");
  });
});

describe("what our voice says", () => {
  const said = { type: "speech.started", text: "Heart rate ninety.", priority: "none" } as const;

  it("goes into the record in its turn, durably, with its time, and changes nothing else", async () => {
    const { session, store } = await opened();
    await session.hear(typed("heart rate ninety"), T0);
    const before = session.state;
    store.next = "wait";
    const recording = session.record(said, T0 + 50);
    const next = session.hear(typed("sats ninety six"), T0 + 60);
    await settle();
    store.release();
    const report = await recording;
    await next;
    expect(report.facts).toEqual([{ v: 2, id: "c-2", atMs: T0 + 50, ...said }]);
    expect(report.state).toEqual({ ...before, log: { ...before.log, factCount: before.log.factCount + 1 } });
    await session.record({ type: "speech.cut", startedId: "c-2" }, T0 + 70);
    expect(types(store.durable).slice(1)).toEqual(["hr 90", "speech.started", "spo2 96", "speech.cut"]);
    expect(store.durable.map((f) => f.id)).toEqual(["c-0", "c-1", "c-2", "c-3", "c-4"]);
  });

  it("is still there after a reload, and gives no id a second time", async () => {
    const { session, store } = await opened();
    await session.record(said, T0 + 50);
    const again = new FakeStore();
    again.loaded = ok(store.durable);
    const resumed = await opened(again);
    expect(resumed.session.state.log).toEqual(session.state.log);
    await resumed.session.hear(typed("sats ninety six"), T0 + 60);
    expect(again.durable.map((f) => f.id)).toEqual(["c-2"]);
  });

  it("is kept for the next write where one fails", async () => {
    const { session, store } = await opened();
    store.next = "fail";
    expect((await session.record(said, T0)).saved.kind).toBe("failed");
    store.next = "keep";
    await session.tick(T0 + 500);
    expect(types(store.durable)).toEqual(["case.opened", "speech.started", "alert.raised", "alert.announced"]);
  });
});

describe("an alert whose words could not be said in time", () => {
  it("is announced anew at the next tick, with the number of then, and once", async () => {
    const { session } = await opened();
    const first = await session.hear(typed("map 65"), T0);
    const [alert] = first.announcements;
    expect(alert?.text).toMatch(/sixty five/);
    expect((await session.tick(T0 + 500)).announcements).toEqual([]);
    await session.hear(typed("map 64"), T0 + 1000);
    await session.takeBack([alert?.alertId ?? ""]);
    expect((await session.tick(T0 + 1500)).announcements.map((a) => a.text)).toEqual([
      "Measured MAP sixty four, twenty six under ninety.",
    ]);
    expect((await session.tick(T0 + 2000)).announcements).toEqual([]);
  });

  it("is not announced where it no longer holds", async () => {
    const { session } = await opened();
    const [alert] = (await session.hear(typed("map 65"), T0)).announcements;
    for (const at of [1, 2, 3]) await session.hear(typed("map 110"), T0 + 1000 * at);
    await session.takeBack([alert?.alertId ?? "", "unknown", "prompt:unknown"]);
    expect((await session.tick(T0 + 4500)).announcements).toEqual([]);
  });
});

describe("faults of the device", () => {
  const lost = (sinceMs: number) => ({ kind: "microphoneLost", sinceMs, text: "Microphone lost." }) as const;

  it("are none while all works", async () => {
    const { session } = await opened();
    await session.hear(typed("heart rate ninety"), T0);
    expect(session.faults).toEqual([]);
  });

  it("hold a record that is not saved from the first failure to the next write that works", async () => {
    const { session, store } = await opened();
    store.next = "fail";
    await session.hear(typed("heart rate ninety"), T0 + 1);
    await session.hear(typed("sats ninety six"), T0 + 2);
    const text = "Record not saved: storage is full. Write it down.";
    expect(session.faults).toEqual([{ kind: "recordNotSaved", sinceMs: T0 + 1, text }]);
    store.next = "keep";
    await session.tick(T0 + 3);
    expect(session.faults).toEqual([]);
  });

  it("hold a microphone that is lost, since it was first", async () => {
    const { session } = await opened();
    session.setMicrophone(lost(1));
    session.setMicrophone(lost(2));
    expect(session.faults).toEqual([lost(1)]);
    session.setMicrophone(undefined);
    expect(session.faults).toEqual([]);
  });
});
