import { describe, expect, it } from "vitest";
import { createMemoryFactStore } from "../../src/adapters/storage/memoryFactStore.ts";
import type { FactStore } from "../../src/app/ports.ts";
import { Session, type Report } from "../../src/app/session.ts";
import { fail } from "../../src/core/result.ts";
import { labelFrom } from "../../src/log/caseLabel.ts";
import { emptyCase } from "../../src/log/caseState.ts";
import type { Fact } from "../../src/log/facts.ts";
import { testContext } from "./playCase.ts";

const T0 = 1_800_000_000_000;
const HOUR_MS = 3_600_000;
const [FIRST, SECOND] = [labelFrom("c1"), labelFrom("c2")];

async function begin(store: FactStore = createMemoryFactStore()) {
  let made = 0;
  const session = new Session({ context: testContext(), store, newCaseId: () => `c${++made}` });
  await session.start(T0);
  const say = (words: string): Promise<Report> =>
    session.hear({ by: "typed", candidates: [{ words, score: 0 }], endedAtMs: T0 }, T0 + 1_000);
  const stored = async (): Promise<readonly Fact[]> => {
    const loaded = await store.load();
    return loaded.ok ? loaded.value : [];
  };
  return { session, store, say, stored };
}

const replyOf = ({ answer }: Report) => [answer?.outcome, answer?.reply];

describe("another case", () => {
  it("is opened only when that was affirmed; nothing of the last patient stays", async () => {
    const { session, say, stored } = await begin();
    await say("map fifty five");
    expect(replyOf(await say("new case"))).toEqual(["asked", `Close case ${FIRST}, and open a new case?`]);
    expect(session.state.log.caseId).toBe("c1");
    const report = await say("affirm");
    expect(replyOf(report)).toEqual(["recorded", `Case ${FIRST} closed. Case ${SECOND} opened.`]);
    expect(report.facts.map(({ type }) => type).slice(-2)).toEqual(["case.closed", "case.opened"]);
    expect(report).toMatchObject({ begun: true, announcements: [] });
    expect(report.withdrawn).toContain("mapLow");
    const { caseId, label, openedAtMs, protocolMark, ...rest } = session.state.log;
    expect({ caseId, label, openedAtMs }).toEqual({ caseId: "c2", label: SECOND, openedAtMs: T0 + 1_000 });
    const { caseId: _c, label: _l, openedAtMs: _o, protocolMark: _p, ...empty } = emptyCase;
    expect(rest).toEqual({ ...empty, factCount: 1 });
    expect(protocolMark).toBeDefined();
    expect((await stored()).map(({ type }) => type)).toEqual(["case.opened"]);
  });

  it("stays unopened when that was denied", async () => {
    const { session, say } = await begin();
    await say("new case");
    expect(replyOf(await say("negative"))).toEqual(["answered", "Not done. Say it again."]);
    expect(session.state.log.caseId).toBe("c1");
  });

  it("can be a rehearsal, and says so", async () => {
    const { session, say } = await begin();
    expect(replyOf(await say("new rehearsal"))).toEqual(["asked", `Close case ${FIRST}, and open a new rehearsal?`]);
    expect(replyOf(await say("affirm"))).toEqual(["recorded", `Case ${FIRST} closed. Rehearsal ${SECOND} opened.`]);
    expect(session.state.log.isRehearsal).toBe(true);
    expect(replyOf(await say("which case"))).toEqual(["answered", `Rehearsal ${SECOND}. No patient.`]);
  });

  it("is not opened where it cannot be written, and the old one goes on", async () => {
    const kept = createMemoryFactStore();
    const store: FactStore = {
      ...kept,
      append: async (facts) =>
        facts.some(({ type }) => type === "case.closed") ? fail({ kind: "quota-exceeded" }) : kept.append(facts),
    };
    const { session, say } = await begin(store);
    await say("new case");
    expect(replyOf(await say("affirm"))[1]).toBe("Not closed: the record cannot be written. The case goes on.");
    expect(session.state.log).toMatchObject({ caseId: "c1", isClosed: false });
    expect(replyOf(await say("map ninety five"))[0]).toBe("recorded");
  });
});

describe("erasing the case", () => {
  it("takes the asking and then the label; nothing is left in memory or in the store", async () => {
    const { session, say, stored } = await begin();
    await say("map fifty five");
    expect(replyOf(await say("erase this case"))).toEqual([
      "asked",
      `Erase case ${FIRST}? It cannot be brought back. Say: erase ${FIRST}.`,
    ]);
    const report = await say(`erase ${FIRST}`);
    expect(replyOf(report)).toEqual([
      "recorded",
      `Case erased from this device. Files saved from it are not. Case ${SECOND} opened.`,
    ]);
    expect(JSON.stringify([session.state, await stored(), report.facts])).not.toMatch(
      new RegExp(`fifty|c1|55|${FIRST}`, "u"),
    );
    expect((await stored()).map(({ type }) => type)).toEqual(["case.opened"]);
  });

  it.each([
    ["a label without the asking", [`erase ${FIRST}`], "Say: erase this case."],
    [
      "another label",
      ["erase this case", "erase zulu nine nine"],
      `Erase case ${FIRST}? It cannot be brought back. Say: erase ${FIRST}.`,
    ],
    ["affirm", ["erase this case", "affirm"], `Erase case ${FIRST}? It cannot be brought back. Say: erase ${FIRST}.`],
    ["negative", ["erase this case", "negative"], "Left open."],
  ])("is not done by %s", async (_what, words, reply) => {
    const { session, say } = await begin();
    await say("map fifty five");
    const reports: Report[] = [];
    for (const line of words) reports.push(await say(line));
    expect(reports.at(-1)?.answer?.reply).toBe(reply);
    expect(session.state.log).toMatchObject({ caseId: "c1", vitals: { map: { entry: { value: 55 } } } });
  });

  it("is told where it failed, and the case goes on", async () => {
    const store = { ...createMemoryFactStore(), erase: async () => fail({ kind: "unavailable", detail: "" } as const) };
    const { session, say } = await begin(store);
    await say("erase this case");
    expect((await say(`erase ${FIRST}`)).answer?.reply).toBe("Not erased: the record cannot be written.");
    expect(session.state.log.caseId).toBe("c1");
  });
});

describe("the device's clock", () => {
  it.each([
    ["set", { kind: "set", byMs: HOUR_MS }, "The device's clock was set forward 60 minutes. Case times run on."],
    ["set back", { kind: "set", byMs: -2 * HOUR_MS }, "The device's clock was set back 2 hours. Case times run on."],
    [
      "asleep",
      { kind: "slept", forMs: 600_000 },
      "The device slept or stood still 10 minutes. Nothing was heard or watched meanwhile.",
    ],
  ] as const)("is recorded and said when it was %s", async (_what, move, text) => {
    const { session, stored } = await begin();
    const { announcements } = await session.clockMoved({ ...move, nowMs: T0 + 500 });
    expect(announcements).toEqual([{ text, priority: "medium", alertId: "clock" }]);
    const last = (await stored()).at(-1);
    expect(last).toMatchObject(
      move.kind === "set" ? { type: "clock.changed", byMs: move.byMs } : { type: "device.slept", forMs: move.forMs },
    );
  });

  it.each([
    ["unchanged", 0, 90_000],
    ["set forward in mid-case, which the record knows", HOUR_MS, 90_000],
    ["set back in mid-case, which the record knows", -HOUR_MS, 90_000],
  ])("%s: after a reload the case goes on by its own time", async (_what, byMs, laterMs) => {
    const { session, store, say } = await begin();
    await say("start apnoea");
    if (byMs !== 0) await session.clockMoved({ kind: "set", byMs, nowMs: T0 + 2_000 });
    const next = new Session({ context: testContext(), store, newCaseId: () => "never" });
    await next.start(T0 + laterMs + byMs);
    expect(next.state.log.setForwardMs).toBe(byMs);
    const { answer } = await next.hear(
      { by: "typed", candidates: [{ words: "clocks", score: 0 }], endedAtMs: 0 },
      T0 + laterMs,
    );
    expect(answer?.reply).toContain("one minute thirty");
  });

  it("set back while no page was open: time goes on from the last entry, and the record says so", async () => {
    const { store, say, stored } = await begin();
    await say("map ninety five");
    const next = new Session({ context: testContext(), store, newCaseId: () => "never" });
    await next.start(T0 - HOUR_MS);
    const last = (await stored()).at(-1);
    expect(last).toMatchObject({ type: "clock.changed", byMs: -HOUR_MS - 1_000, atMs: T0 + 1_000 });
  });
});

it("another tab shows the case and takes nothing", async () => {
  const { stored } = await begin();
  const facts = await stored();
  const asked: unknown[] = [];
  const store: FactStore = {
    load: async () => fail({ kind: "other-tab", facts }),
    append: async (added) => {
      asked.push(added);
      return fail({ kind: "other-tab", facts: [] });
    },
    erase: async () => fail({ kind: "other-tab", facts: [] }),
  };
  const { session, say } = await begin(store);
  expect(session.state.log.caseId).toBe("c1");
  expect(session.faults).toMatchObject([
    { text: "Another tab keeps the record. This one shows how it stood, until that one is closed." },
  ]);
  expect(replyOf(await say("map fifty five"))).toEqual(["refused", "Read only: another tab keeps this case."]);
  expect((await session.tick(T0 + HOUR_MS)).facts).toEqual([]);
  expect(session.state.log.vitals).toEqual({});
  expect(asked).toEqual([]);
});
