import { createHash, generateKeyPairSync, sign } from "node:crypto";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { createWebCryptoSignatures, signaturesHere } from "../../../src/adapters/files/webCrypto.ts";

const here = signaturesHere();
const bytesOf = (hex: string): Uint8Array => Uint8Array.from(Buffer.from(hex, "hex"));

it("gives the SHA-256 that Node gives", async () => {
  await fc.assert(
    fc.asyncProperty(fc.uint8Array({ maxLength: 300 }), async (bytes) => {
      expect(await here.sha256Hex(bytes)).toEqual({
        ok: true,
        value: createHash("sha256").update(bytes).digest("hex"),
      });
    }),
  );
});

describe("Ed25519", () => {
  const { publicKey, privateKey } = generateKeyPairSync("ed25519");
  const spki = new Uint8Array(publicKey.export({ type: "spki", format: "der" }));

  it("holds for what Node signed, and for nothing that differs in one bit", async () => {
    await fc.assert(
      fc.asyncProperty(fc.uint8Array({ minLength: 1, maxLength: 100 }), fc.nat(), async (bytes, n) => {
        const signature = new Uint8Array(sign(null, bytes, privateKey));
        expect(await here.verifyEd25519(spki, signature, bytes)).toEqual({ ok: true, value: true });
        const changed = Uint8Array.from(bytes, (byte, i) => (i === n % bytes.length ? byte ^ (1 << (n % 8)) : byte));
        expect(await here.verifyEd25519(spki, signature, changed)).toEqual({ ok: true, value: false });
        const broken = Uint8Array.from(signature, (byte, i) => (i === n % 64 ? byte ^ (1 << (n % 8)) : byte));
        expect(await here.verifyEd25519(spki, broken, bytes)).toEqual({ ok: true, value: false });
      }),
      { numRuns: 25 },
    );
  });

  // RFC 8032, section 7.1, test 1 (empty message); from memory, confirmed only by this test.
  it("holds for the first vector of RFC 8032", async () => {
    const key = bytesOf("302a300506032b6570032100d75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a");
    const signature = bytesOf(
      "e5564300c360ac729086e2cc806e828a84877f1eb8e5d974d873e065224901555fb8821590a33bacc61e39701cf9b46bd25bf5f0595bbe24655141438e7a100b",
    );
    expect(await here.verifyEd25519(key, signature, new Uint8Array())).toEqual({ ok: true, value: true });
  });

  it("refuses a key that is none", async () => {
    const refused = await here.verifyEd25519(new Uint8Array(44), new Uint8Array(64), new Uint8Array());
    expect(refused).toMatchObject({ ok: false, error: { kind: "not-supported" } });
  });
});

it("says so where the platform has no cryptography, or not this one", async () => {
  const none = createWebCryptoSignatures(undefined);
  const detail = "it has no cryptography here; use HTTPS or localhost";
  expect(await none.sha256Hex(new Uint8Array())).toEqual({ ok: false, error: { kind: "not-supported", detail } });
  expect(await none.verifyEd25519(new Uint8Array(), new Uint8Array(), new Uint8Array())).toEqual({
    ok: false,
    error: { kind: "not-supported", detail },
  });
  const refuse = () => Promise.reject(new DOMException("Unrecognized name.", "NotSupportedError"));
  const old = createWebCryptoSignatures({ digest: refuse, importKey: refuse, verify: refuse });
  expect(await old.sha256Hex(new Uint8Array())).toMatchObject({ ok: false, error: { kind: "not-supported" } });
  const refused = await old.verifyEd25519(new Uint8Array(), new Uint8Array(), new Uint8Array());
  expect(refused).toMatchObject({ ok: false, error: { kind: "not-supported" } });
});
