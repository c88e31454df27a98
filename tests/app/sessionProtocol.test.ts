import { describe, expect, it } from "vitest";
import { createMemoryFactStore } from "../../src/adapters/storage/memoryFactStore.ts";
import type { AppContext } from "../../src/app/context.ts";
import type { FactStore, Utterance } from "../../src/app/ports.ts";
import type { LoadedProtocol } from "../../src/app/protocolFile.ts";
import { Session } from "../../src/app/session.ts";
import { fail, ok } from "../../src/core/result.ts";
import type { Fact } from "../../src/log/facts.ts";
import type { Protocol } from "../../src/protocol/protocol.ts";
import { testContext } from "./playCase.ts";

const context = testContext();
const T0 = 1_800_000_000_000;
const typed = (words: string): Utterance => ({ by: "typed", candidates: [{ words, score: 0 }], endedAtMs: T0 });

const withMapTarget = (value: number): Protocol => ({
  ...context.protocol,
  name: "Other",
  version: "9",
  status: "approved",
  targets: {
    ...context.protocol.targets,
    populations: context.protocol.targets.populations.map((p) =>
      p.kind === "adult" ? { ...p, mapMmHg: { ...p.mapMmHg, target: { ...p.mapMmHg.target, value } } } : p,
    ),
  },
});
const other: LoadedProtocol = { protocol: withMapTarget(100), hash: "ab".repeat(32), signedBy: "0123456789abcdef" };
const OTHER_MARK = { name: "Other", version: "9", hash: "ab".repeat(32), signedBy: "0123456789abcdef" };

async function opened(store: FactStore = createMemoryFactStore(), on: AppContext = context) {
  const session = new Session({ context: on, store, newCaseId: () => "c" });
  const started = await session.start(T0);
  return { session, store, started };
}

const stored = async (store: FactStore): Promise<readonly Fact[]> => {
  const facts = await store.load();
  return facts.ok ? facts.value : [];
};

describe("the protocol in the record", () => {
  it("opens a case with the mark, hash included", async () => {
    const { store } = await opened();
    const [first] = await stored(store);
    expect(first).toMatchObject({ type: "case.opened", protocol: context.mark });
    expect(context.mark.hash).toMatch(/^[0-9a-f]{64}$/);
  });

  it("says at the start that it is an example, again at every resume, and nothing of an approved one", async () => {
    const { store, started } = await opened();
    expect(started.announcements.map((a) => [a.priority, a.text])).toEqual([
      ["none", "Example protocol, not approved for patients."],
    ]);
    const again = await opened(store);
    expect(again.started.announcements).toEqual(started.announcements);
    expect((await stored(store)).length).toBe(1);
    const approved = { ...context, protocol: { ...context.protocol, status: "approved" as const } };
    expect((await opened(createMemoryFactStore(), approved)).started.announcements).toEqual([]);
  });

  it("repeats it when asked to say again", async () => {
    const { session } = await opened();
    const { answer } = await session.hear(typed("say again"), T0);
    expect(answer?.reply).toBe("Example protocol, not approved for patients.");
  });

  it("notes at the resume that another protocol counts now, before anything else", async () => {
    const { store } = await opened();
    const { started } = await opened(store, { ...context, protocol: other.protocol, mark: OTHER_MARK });
    expect((await stored(store)).map((f) => f.type)).toEqual(["case.opened", "protocol.replaced"]);
    expect((await stored(store))[1]).toMatchObject({ protocol: OTHER_MARK, atMs: T0 });
    expect(started).toMatchObject({ resumed: true, kind: "saved" });
    expect(started.announcements.map((a) => a.text)).toEqual(["Protocol now Other, version 9."]);
    // The last mark of the record counts: going on with it adds nothing.
    await opened(store, { ...context, protocol: other.protocol, mark: OTHER_MARK });
    expect((await stored(store)).length).toBe(2);
  });

  it.each([
    ["hash", { ...context.mark, hash: "cd".repeat(32) }],
    ["signature", { ...context.mark, signedBy: "0123456789abcdef" }],
    ["name", { ...context.mark, name: "X" }],
    ["version", { ...context.mark, version: "X" }],
  ])("takes another %s for another protocol", async (_what, mark) => {
    const { store } = await opened();
    await opened(store, { ...context, mark });
    expect((await stored(store)).map((f) => f.type)).toEqual(["case.opened", "protocol.replaced"]);
  });
});

describe("another protocol during a case", () => {
  it("is written down, is said, and counts from then on", async () => {
    const { session, store } = await opened();
    await session.hear(typed("map ninety five"), T0);
    const report = await session.useProtocol(other, T0 + 1000);
    expect(report.saved).toEqual({ kind: "saved" });
    expect(report.facts[0]).toMatchObject({ type: "protocol.replaced", protocol: OTHER_MARK, atMs: T0 + 1000 });
    // Ninety five was on target; under the new target of one hundred it is an alert at once.
    expect(report.announcements.map((a) => a.text)).toEqual([
      "Protocol now Other, version 9.",
      "Measured MAP ninety five, five under one hundred.",
    ]);
    expect(session.context.protocol).toBe(other.protocol);
    expect(session.context.mark).toEqual(OTHER_MARK);
    expect(await stored(store)).toEqual(expect.arrayContaining([...report.facts]));
  });

  it("takes its turn: what was heard before is judged by the old, what was heard after by the new", async () => {
    const { session } = await opened();
    const [before, , after] = await Promise.all([
      session.hear(typed("map ninety five"), T0),
      session.useProtocol(other, T0),
      session.hear(typed("map ninety six"), T0),
    ]);
    expect(before.answer?.reply).toContain("on target");
    expect([after.answer?.reply, ...after.announcements.map((a) => a.text)].join(" ")).toContain(
      "four under one hundred",
    );
  });

  it("leaves the record as it is when it is the same one", async () => {
    const { session, store } = await opened();
    const { mark, protocol } = context;
    const report = await session.useProtocol({ protocol, hash: mark.hash, signedBy: undefined }, T0);
    expect(report.facts).toEqual([]);
    expect((await stored(store)).length).toBe(1);
    expect(report.announcements[0]?.text).toBe(
      `Protocol now ${protocol.name}, version ${protocol.version}. Example protocol, not approved for patients.`,
    );
  });

  it("ends an alert that the new protocol does not know", async () => {
    const { session } = await opened();
    await session.hear(typed("sats eighty five"), T0);
    expect(Object.keys(session.state.log.alerts)).toEqual(["spo2Low"]);
    const protocol = { ...other.protocol, alerts: other.protocol.alerts.filter((a) => a.code !== "spo2") };
    const report = await session.useProtocol({ ...other, protocol }, T0 + 1);
    expect(report.withdrawn).toContain("spo2Low");
    expect(session.state.log.alerts).toEqual({});
  });

  it("goes on where the step that waits for its answer is not in it", async () => {
    const { session } = await opened();
    await session.hear(typed("next"), T0);
    const groups = other.protocol.groups.map((g) => ({
      ...g,
      steps: g.steps.map((s) => ({ ...s, id: `new ${s.id}` })),
    }));
    await session.useProtocol({ ...other, protocol: { ...other.protocol, groups } }, T0);
    expect((await session.hear(typed("done"), T0)).answer?.outcome).toBeDefined();
    expect((await session.hear(typed("next"), T0)).answer?.outcome).toBe("answered");
  });

  it("counts even while nothing can be stored; the fact waits for the next write that works", async () => {
    const kept: Fact[] = [];
    let works = true;
    const store: FactStore = {
      load: async () => ok([]),
      erase: () => Promise.resolve(ok(undefined)),
      append: async (facts) => {
        if (!works) return fail({ kind: "quota-exceeded" });
        kept.push(...facts);
        return ok(undefined);
      },
    };
    const { session } = await opened(store);
    works = false;
    expect((await session.useProtocol(other, T0)).saved.kind).toBe("failed");
    expect(session.context.protocol).toBe(other.protocol);
    works = true;
    await session.tick(T0 + 1);
    // That it was not saved was an alert until it was.
    const kinds = kept.map((f) => f.type);
    expect(kinds).toEqual(["case.opened", "protocol.replaced", "alert.raised", "alert.announced"]);
  });
});
