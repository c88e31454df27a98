import { expect, it } from "vitest";
import { protocolNotice, roomNotice } from "../../src/app/notices.ts";

it.each([
  ["all is well", { isKept: true, freeBytes: 1e9 }, "", ""],
  ["nothing is known", {}, "", ""],
  [
    "it may be cleared",
    { isKept: false },
    "This browser may clear the record.",
    "This browser may clear the record when space runs short. Save it to a file after the case.",
  ],
  [
    "there is little room",
    { isKept: true, freeBytes: 12_345_678 },
    "Little room for the record: 12 megabytes.",
    "Little room for the record: 12 megabytes.",
  ],
])("where %s, that is said once and shown", (_what, room, said, shown) => {
  const notice = roomNotice(room);
  expect([notice.said?.map(({ text }) => text), notice.shown.roomText]).toEqual([said === "" ? [] : [said], shown]);
});

it("a fault of the protocol file is said, a choice is only shown", () => {
  const refused = { kind: "refused", text: "No.", errors: [] } as const;
  expect(protocolNotice(refused)).toEqual({ shown: { protocolNotice: refused } });
  expect(protocolNotice(refused, "It cannot be used.").said).toMatchObject([{ text: "It cannot be used." }]);
});
