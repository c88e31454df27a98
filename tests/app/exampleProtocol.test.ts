import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { readExampleProtocol } from "../../src/app/exampleProtocol.ts";
import { defaultProtocol } from "../../src/protocol/defaultProtocol.ts";
import { minimalProtocol } from "../protocol/fixtures/minimalProtocol.ts";
import { withValue } from "../protocol/fixtures/withValue.ts";

const encode = (text: string): Uint8Array => new TextEncoder().encode(text);
const errorsOf = (text: string): readonly string[] => {
  const read = readExampleProtocol(encode(text));
  return read.ok ? [] : read.error;
};

describe("the protocol that comes with the app", () => {
  it("read from the bytes of its file is the one that Node reads", () => {
    const bytes = readFileSync(new URL("../../src/protocol/defaultProtocol.json", import.meta.url));
    expect(readExampleProtocol(bytes)).toEqual({ ok: true, value: defaultProtocol });
  });

  it.each([
    ["a page that came in its place", "<!doctype html><title>Tragus</title>", /^The file is not JSON/u],
    ["a file that was cut short", JSON.stringify(minimalProtocol()).slice(0, -9), /^The file is not JSON/u],
    ["an older schema", JSON.stringify({ ...minimalProtocol(), schema: 2 }), /^schema:/u],
    ["no name", JSON.stringify(withValue<unknown>(minimalProtocol(), "name", "")), /^name: must not be empty$/u],
  ])("is refused as %s", (_what, text, said) => {
    expect(errorsOf(text).some((error) => said.test(error))).toBe(true);
  });
});
