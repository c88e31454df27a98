import { fail, ok, type Result } from "../../core/result.ts";
import type { Sha256Hex } from "../../log/chain/sealFacts.ts";
import type { Signatures, SignaturesError } from "../../app/ports.ts";

type Subtle = Pick<SubtleCrypto, "digest" | "importKey" | "verify">;

const notSupported = (detail: string): Result<never, SignaturesError> => fail({ kind: "not-supported", detail });

/** The signatures of this browser, or of Node. A page that is not on HTTPS or localhost has none. */
export const signaturesHere = (): Signatures =>
  createWebCryptoSignatures((globalThis.crypto as Crypto | undefined)?.subtle);

/** SHA-256 of a text as UTF-8, for the chain of the record. */
export function sha256HexHere(): Sha256Hex {
  const signatures = signaturesHere();
  return async (text) => {
    const digest = await signatures.sha256Hex(new TextEncoder().encode(text));
    return digest.ok ? digest : fail(digest.error.detail);
  };
}

/**
 * Digests and signatures by Web Cryptography.
 *
 * @param subtle undefined where the platform has none: everything is then refused as not supported.
 */
export function createWebCryptoSignatures(subtle: Subtle | undefined): Signatures {
  return {
    sha256Hex: async (bytes) => {
      if (subtle === undefined) return notSupported("it has no cryptography here; use HTTPS or localhost");
      try {
        const digest = new Uint8Array(await subtle.digest("SHA-256", new Uint8Array(bytes)));
        return ok(Array.from(digest, (byte) => byte.toString(16).padStart(2, "0")).join(""));
      } catch (thrown) {
        return notSupported(String(thrown));
      }
    },
    verifyEd25519: async (spki, signature, bytes) => {
      if (subtle === undefined) return notSupported("it has no cryptography here; use HTTPS or localhost");
      try {
        const key = await subtle.importKey("spki", new Uint8Array(spki), { name: "Ed25519" }, false, ["verify"]);
        return ok(await subtle.verify({ name: "Ed25519" }, key, new Uint8Array(signature), new Uint8Array(bytes)));
      } catch (thrown) {
        return notSupported(`it cannot use this Ed25519 key (${String(thrown)})`);
      }
    },
  };
}
