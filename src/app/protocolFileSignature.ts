import { fail, ok, type Result } from "../core/result.ts";
import type { Signatures } from "./ports.ts";
import { base64Bytes, utf8Text } from "./protocolFileBytes.ts";

const SIGNATURE_BYTES = 64;
const KEY_BYTES = 32;
/** What RFC 8410 puts before the 32 bytes of an Ed25519 public key. */
const SPKI_START = [0x30, 0x2a, 0x30, 0x05, 0x06, 0x03, 0x2b, 0x65, 0x70, 0x03, 0x21, 0x00];
const PEM = /-----BEGIN PUBLIC KEY-----([\s\S]+?)-----END PUBLIC KEY-----/u;
/** Hexadecimal digits by which a key is named. */
const KEY_NAME_DIGITS = 16;

/** A signature file: 64 bytes, or their base64 in text. */
export function signatureBytes(file: Uint8Array): Uint8Array | undefined {
  if (file.length === SIGNATURE_BYTES) return file;
  const bytes = base64Bytes(utf8Text(file) ?? "");
  return bytes?.length === SIGNATURE_BYTES ? bytes : undefined;
}

export const isKeyFile = (text: string): boolean => PEM.test(text);

/** The SPKI bytes of an Ed25519 public key in PEM. */
function spkiBytes(pem: string): Uint8Array | undefined {
  const spki = base64Bytes(PEM.exec(pem)?.[1] ?? "");
  const isEd25519 = spki?.length === SPKI_START.length + KEY_BYTES && SPKI_START.every((byte, i) => spki[i] === byte);
  return isEd25519 ? spki : undefined;
}

/** The name of a trusted key: the first 16 hexadecimal digits of the SHA-256 of its SPKI. */
export async function keyName(pem: string, signatures: Signatures): Promise<Result<string, string>> {
  const spki = spkiBytes(pem);
  if (spki === undefined) return fail("The key is not an Ed25519 public key in PEM (BEGIN PUBLIC KEY).");
  const hash = await signatures.sha256Hex(spki);
  return hash.ok ? ok(hash.value.slice(0, KEY_NAME_DIGITS)) : fail(notSupported(hash.error.detail));
}

export const notSupported = (detail: string): string => `This browser or program cannot check it: ${detail}.`;

/** A file, its detached signature if it has one, and the key that this device trusts if it has one. */
export type Signed = {
  readonly bytes: Uint8Array;
  readonly signature?: Uint8Array;
  /** PEM. */
  readonly trustedKey?: string;
};

/**
 * Whose signature holds over the exact bytes of a file.
 *
 * The signature is Ed25519, detached, made for instance with
 * `openssl pkeyutl -sign -rawin -inkey key.pem -in protocol.json -out protocol.json.sig`; the key is what
 * `openssl pkey -in key.pem -pubout` prints.
 *
 * @returns the name of the trusted key; `undefined` for a file that carries no signature.
 * Errors: one sentence; the file must then not be used: the signature does not hold, no key is trusted, the key or the
 * signature is none, or the platform cannot check.
 */
export async function checkSignature(
  { bytes, signature, trustedKey }: Signed,
  signatures: Signatures,
): Promise<Result<string | undefined, string>> {
  if (signature === undefined) return ok(undefined);
  if (trustedKey === undefined)
    return fail("The file comes with a signature, but no key is trusted yet: choose its owner's public key with it.");
  const raw = signatureBytes(signature);
  if (raw === undefined) return fail("The signature file is neither 64 bytes nor base64 of 64 bytes.");
  const name = await keyName(trustedKey, signatures);
  const spki = spkiBytes(trustedKey);
  if (!name.ok || spki === undefined) return name;
  const held = await signatures.verifyEd25519(spki, raw, bytes);
  if (!held.ok) return fail(notSupported(held.error.detail));
  if (!held.value)
    return fail(
      `The signature is broken: the file was changed after it was signed, or key ${name.value} did not sign it.`,
    );
  return name;
}
