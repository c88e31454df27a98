import { protocolNotice } from "../../src/app/notices.ts";
import { expect, it, vi } from "vitest";
import { createMemoryFactStore } from "../../src/adapters/storage/memoryFactStore.ts";
import { testContext } from "./playCase.ts";
import { conversation, FakeRecogniser, FakeSpeaker, settle } from "./talkFakes.ts";

const EXAMPLE = "Example protocol, not approved for patients.";
const withExample = () => conversation(createMemoryFactStore(), new FakeRecogniser(), testContext());

it("says at the start, without a tone, that the protocol is an example", async () => {
  const { speaker } = await withExample();
  expect(speaker.told).toEqual([EXAMPLE]);
});

it("says it again, after the reply, where it was talked over", async () => {
  const { speaker, recogniser } = await withExample();
  recogniser.send({ kind: "speechStarted", atMs: 0 });
  recogniser.hears("heart rate ninety");
  await settle();
  recogniser.send({ kind: "speechEnded", atMs: 0 });
  for (let i = 0; i < 3; i++) await speaker.ends();
  expect(speaker.told).toEqual([EXAMPLE, "silence", "mark heard", "Heart rate ninety.", EXAMPLE]);
});

it("says which protocol counts, and shows what came of the choice", async () => {
  const { talk, speaker, last, session } = await conversation();
  const { protocol } = testContext();
  expect(last()?.protocolNotice).toBeUndefined();
  await talk.useProtocol({
    protocol: { ...protocol, name: "Other", status: "approved" },
    hash: "0",
    signedBy: undefined,
  });
  expect(speaker.told).toEqual([`Protocol now Other, version ${protocol.version}.`]);
  expect(session.context.mark).toEqual({ name: "Other", version: protocol.version, hash: "0" });
  const notice = { kind: "refused", text: "No.", errors: ["a: is missing"] } as const;
  talk.notice(protocolNotice(notice));
  expect(last()?.protocolNotice).toEqual(notice);
  expect(speaker.told.length).toBe(1);
});

it("says that the stored file cannot be used, with a tone", async () => {
  const { talk, speaker } = await conversation();
  talk.notice(protocolNotice({ kind: "refused", text: "", errors: [] }, "The stored protocol cannot be used."));
  expect(speaker.told).toEqual(["medium: The stored protocol cannot be used."]);
});

it("listens first and has its voice ready before it says so: loading both at once would make both late", async () => {
  const ready = vi.spyOn(FakeSpeaker.prototype, "warmUp");
  const said = vi.spyOn(FakeSpeaker.prototype, "say");
  await withExample();
  expect(said.mock.invocationCallOrder[0]).toBeGreaterThan(ready.mock.invocationCallOrder[0] ?? Infinity);
  vi.restoreAllMocks();
});
