import { createHash, generateKeyPairSync, sign } from "node:crypto";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { createWebCryptoSignatures, signaturesHere } from "../../src/adapters/files/webCrypto.ts";
import { bundledProtocol, markOf, readProtocolFile } from "../../src/app/protocolFile.ts";
import type { Signatures } from "../../src/app/ports.ts";
import type { Signed } from "../../src/app/protocolFileSignature.ts";
import { base64Bytes, utf8Bytes, utf8Text } from "../../src/app/protocolFileBytes.ts";
import { canonicalForm } from "../../src/protocol/canonical.ts";
import { defaultProtocol } from "../../src/protocol/defaultProtocol.ts";
import fileOne from "../protocol/fixtures/protocol-v1.json" with { type: "json" };
import fileTwo from "../protocol/fixtures/protocol-v2.json" with { type: "json" };
import { minimalProtocol } from "../protocol/fixtures/minimalProtocol.ts";
import { withValue } from "../protocol/fixtures/withValue.ts";

const here = signaturesHere();
const encode = (text: string): Uint8Array => new TextEncoder().encode(text);
const textOf = (json: unknown): string => JSON.stringify(json, null, 2);
const bytes = encode(textOf(minimalProtocol()));

const { publicKey, privateKey } = generateKeyPairSync("ed25519");
const trustedKey = publicKey.export({ type: "spki", format: "pem" }).toString();
const signature = new Uint8Array(sign(null, bytes, privateKey));
const keyHash = createHash("sha256")
  .update(publicKey.export({ type: "spki", format: "der" }))
  .digest("hex");

const errorsOf = async (file: Signed, signatures: Signatures): Promise<readonly string[]> => {
  const read = await readProtocolFile(file, defaultProtocol, signatures);
  return read.ok ? [] : read.error;
};
const errorsOfText = (text: string) => errorsOf({ bytes: encode(text) }, here);

describe("a good file", () => {
  it("is read, with the hash of its canonical form", async () => {
    const read = await readProtocolFile({ bytes }, defaultProtocol, here);
    const protocol = minimalProtocol();
    const hash = createHash("sha256").update(canonicalForm(protocol)).digest("hex");
    expect(read).toEqual({ ok: true, value: { protocol, hash, signedBy: undefined } });
    if (read.ok) expect(markOf(read.value)).toEqual({ name: protocol.name, version: protocol.version, hash });
  });

  it("has the same hash however it is spaced, and with a byte order mark", async () => {
    const read = async (text: string) => {
      const result = await readProtocolFile({ bytes: encode(text) }, defaultProtocol, here);
      return result.ok ? result.value.hash : undefined;
    };
    const hash = await read(textOf(minimalProtocol()));
    expect(hash).toBeDefined();
    expect(await read(`\ufeff${JSON.stringify(minimalProtocol())}\r\n`)).toBe(hash);
    expect(await read(textOf({ ...minimalProtocol(), version: "1.1" }))).not.toBe(hash);
  });

  it.each([
    [1, fileOne],
    [2, fileTwo],
  ])("may be of schema %d", async (schema, file) => {
    const read = await readProtocolFile({ bytes: encode(textOf(file)) }, defaultProtocol, here);
    expect(read).toMatchObject({ ok: true, value: { upgradedFrom: schema, protocol: { name: file.name, schema: 3 } } });
  });

  it("is marked in the same way when it is the bundled one; without a digest it still serves, without a hash", async () => {
    const hash = createHash("sha256").update(canonicalForm(defaultProtocol)).digest("hex");
    expect(await bundledProtocol(defaultProtocol, here)).toEqual({
      protocol: defaultProtocol,
      hash,
      signedBy: undefined,
    });
    const without = await bundledProtocol(defaultProtocol, createWebCryptoSignatures(undefined));
    expect(markOf(without)).toEqual({ name: defaultProtocol.name, version: defaultProtocol.version });
  });
});

describe("a signature", () => {
  it.each([
    ["64 bytes", signature],
    ["base64", encode(`${Buffer.from(signature).toString("base64")}\n`)],
    [
      "base64 over two lines",
      encode(
        Buffer.from(signature)
          .toString("base64")
          .replace(/^(.{40})/, "$1\r\n"),
      ),
    ],
  ])("that holds names the key: %s", async (_form, signed) => {
    const read = await readProtocolFile({ bytes, signature: signed, trustedKey }, defaultProtocol, here);
    expect(read).toMatchObject({ ok: true, value: { signedBy: keyHash.slice(0, 16) } });
    if (read.ok) expect(markOf(read.value).signedBy).toBe(keyHash.slice(0, 16));
  });

  it("is not needed where a key is trusted; the file counts as not signed", async () => {
    expect(await readProtocolFile({ bytes, trustedKey }, defaultProtocol, here)).toMatchObject({
      ok: true,
      value: { signedBy: undefined },
    });
  });

  it("that is broken refuses the file: one space more, another key, another signature", async () => {
    const said = [
      `The signature is broken: the file was changed after it was signed, or key ${keyHash.slice(0, 16)} did not sign it.`,
    ];
    const spaced = encode(`${textOf(minimalProtocol())} `);
    expect(await errorsOf({ bytes: spaced, signature, trustedKey }, here)).toEqual(said);
    const stranger = sign(null, bytes, generateKeyPairSync("ed25519").privateKey);
    expect(await errorsOf({ bytes, signature: stranger, trustedKey }, here)).toEqual(said);
  });

  it.each<readonly [string, Signed, string]>([
    ["no key is trusted", { bytes, signature }, "no key is trusted yet: choose its owner's public key"],
    ["it is none", { bytes, signature: encode("hello"), trustedKey }, "neither 64 bytes nor base64 of 64 bytes"],
    ["it is too long", { bytes, signature: new Uint8Array(65), trustedKey }, "neither 64 bytes nor base64"],
    ["the key is none", { bytes, signature, trustedKey: "x" }, "not an Ed25519 public key in PEM"],
    [
      "the key is of another kind",
      {
        bytes,
        signature,
        trustedKey: generateKeyPairSync("ec", { namedCurve: "P-256" }).publicKey.export({
          type: "spki",
          format: "pem",
        }),
      },
      "not an Ed25519 public key in PEM",
    ],
    [
      "the key is a private one",
      { bytes, signature, trustedKey: privateKey.export({ type: "pkcs8", format: "pem" }).toString() },
      "not an Ed25519 public key in PEM",
    ],
  ])("refuses the file where %s", async (_why, file, said) => {
    const errors = await errorsOf(file, here);
    expect(errors.length).toBe(1);
    expect(errors[0]).toContain(said);
  });

  it("refuses the file where the platform cannot check it", async () => {
    const noEd25519 = {
      ...here,
      verifyEd25519: () => createWebCryptoSignatures(undefined).verifyEd25519(bytes, bytes, bytes),
    };
    expect(await errorsOf({ bytes, signature, trustedKey }, noEd25519)).toEqual([
      "This browser or program cannot check it: it has no cryptography here; use HTTPS or localhost.",
    ]);
    expect(await errorsOf({ bytes }, createWebCryptoSignatures(undefined))).toEqual([
      "This browser or program cannot check it: it has no cryptography here; use HTTPS or localhost.",
    ]);
  });
});

describe("a bad file", () => {
  it.each([
    ["", "The file is empty."],
    [" \n", "The file is empty."],
    ['{\n  "schema": 2,\n  oops\n}', "The file is not JSON: see line 3, column 3."],
    ['{"schema": 2', "The file is not JSON"],
    ['{"schema": "2', "The file is not JSON: it ends too early."],
    [
      '{"a": {"cap": 1, "b": {"cap": 2}, "cap": 3}}',
      'The file has the entry "cap" twice in one group, the second before line 1, column 40.',
    ],
    [
      '{"a": 1,\n "\\u0061": 2}',
      'The file has the entry "\\u0061" twice in one group, the second before line 2, column 10.',
    ],
    ["[]", "The file is not a protocol file: it must be a group of named entries"],
    ["null", "The file is not a protocol file: it must be a group of named entries"],
    ["{}", "schema: is missing: it says how to read the rest; the newest is 3"],
    [
      textOf({ ...minimalProtocol(), schema: 9 }),
      "schema: 9 is newer than 3, the newest that this version of the app can read",
    ],
  ])("%j", async (text, said) => {
    const [first = "", ...more] = await errorsOfText(text);
    expect(first.startsWith(said)).toBe(true);
    expect(more).toEqual([]);
  });

  it("tells the same key in two groups, in lists and in values from one that stands twice", async () => {
    const text = '{"a":{"k":"k:"},"b":[{"k":1},{"k":"a\\"k\\":"}],"k":{"k":{}}}';
    expect(await errorsOfText(text)).toEqual(["schema: is missing: it says how to read the rest; the newest is 3"]);
  });

  it("is no text", async () => {
    expect(await errorsOf({ bytes: new Uint8Array([0x7b, 0xff, 0x7d]) }, here)).toEqual([
      "The file is not text in UTF-8.",
    ]);
  });

  it("is refused above a size, not at it", async () => {
    const text = textOf(minimalProtocol());
    const padded = (size: number) => encode(text + " ".repeat(size - encode(text).length));
    expect(await errorsOf({ bytes: padded(1_000_000) }, here)).toEqual([]);
    expect(await errorsOf({ bytes: padded(1_000_001) }, here)).toEqual([
      "The file has 1000001 bytes; a protocol has at most 1000000.",
    ]);
  });

  it("is named with everything that is wrong with it", async () => {
    const file = withValue(withValue<unknown>(minimalProtocol(), "name", ""), "timers.foo", 1);
    expect(await errorsOfText(textOf(file))).toEqual(["name: must not be empty", "timers.foo: is not a known entry"]);
  });

  it("of schema 1 is told apart: what is wrong with what it became", async () => {
    const text = textOf(withValue<unknown>(fileOne, "assumedIcpMmHg.value.high", 130));
    expect(await errorsOfText(text)).toEqual([
      "Upgraded from schema 1, assumedIcpMmHg.value.high: 130 is outside 0 to 100",
    ]);
  });

  it("holds half of a surrogate pair", async () => {
    const text = textOf({ ...minimalProtocol(), name: "\ud800" });
    expect(await errorsOfText(text)).toEqual(["The file holds half of a surrogate pair, which is no text."]);
    for (const name of ["\ud83d\ude00", "\\ud800", "\\\\ud800"])
      expect(await errorsOfText(textOf({ ...minimalProtocol(), name }))).toEqual([]);
  });

  it("never throws, whatever the bytes", async () => {
    await fc.assert(
      fc.asyncProperty(fc.oneof(fc.uint8Array(), fc.json().map(encode)), async (junk) => {
        const read = await readProtocolFile({ bytes: junk }, defaultProtocol, here);
        expect(read.ok).toBe(false);
      }),
    );
  });
});

describe("bytes agree with the platform's own", () => {
  it("as UTF-8", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary" }), (text) => {
        expect(utf8Bytes(text)).toEqual(encode(text));
        expect(utf8Text(encode(text))).toBe(new TextDecoder().decode(encode(text)));
      }),
    );
    const strict = new TextDecoder("utf-8", { fatal: true });
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 8 }), (junk) => {
        let expected: string | undefined;
        try {
          expected = strict.decode(junk);
        } catch {
          expected = undefined;
        }
        expect(utf8Text(junk)).toBe(expected);
      }),
    );
  });

  it("as base64", () => {
    fc.assert(
      fc.property(fc.uint8Array({ minLength: 1 }), (data) => {
        expect(base64Bytes(Buffer.from(data).toString("base64"))).toEqual(data);
      }),
    );
    for (const text of ["", "A", "AA", "AAA", "A===", "AA=A", "****", "AAAA="])
      expect(base64Bytes(text)).toBeUndefined();
  });
});
