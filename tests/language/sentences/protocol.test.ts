import { expect, it } from "vitest";
import { sayProtocolReplaced, sayProtocolStatus, showProtocolMark } from "../../../src/language/sentences/protocol.ts";

const protocol = { name: "Ours", version: "2.1", date: "2026-01-31", owner: "A service" };
const mark = { name: "Ours", version: "2.1", hash: "0123456789abcdef".repeat(4) };

it("says of an example that it is one, of an approved protocol nothing", () => {
  expect(sayProtocolStatus({ status: "example" })).toBe("Example protocol, not approved for patients.");
  expect(sayProtocolStatus({ status: "approved" })).toBe("");
});

it("says which protocol counts now", () => {
  expect(sayProtocolReplaced({ ...protocol, status: "approved" })).toBe("Protocol now Ours, version 2.1.");
  expect(sayProtocolReplaced({ ...protocol, status: "example" })).toBe(
    "Protocol now Ours, version 2.1. Example protocol, not approved for patients.",
  );
});

it("shows whose it is, whether it is approved, and by what it is known", () => {
  expect(showProtocolMark({ ...protocol, status: "example" }, mark)).toBe(
    "Protocol: Ours, version 2.1, 2026-01-31, A service. Example protocol, not approved for patients. SHA-256 begins 0123456789abcdef. Not signed.",
  );
  const { hash: _hash, ...bare } = mark;
  expect(showProtocolMark({ ...protocol, status: "approved" }, { ...bare, signedBy: "fedcba9876543210" })).toBe(
    "Protocol: Ours, version 2.1, 2026-01-31, A service. Signed by key fedcba9876543210.",
  );
});
