import { fail, ok, type Result } from "../core/result.ts";
import type { ProtocolMark } from "../log/facts.ts";
import { canonicalForm } from "../protocol/canonical.ts";
import type { Protocol } from "../protocol/protocol.ts";
import { showProtocolError, type ProtocolError } from "../protocol/protocolError.ts";
import type { OlderSchema, upgradeProtocol } from "../protocol/upgrade.ts";
import { validateProtocol } from "../protocol/validate.ts";
import type { Signatures } from "./ports.ts";
import { utf8Bytes } from "./protocolFileBytes.ts";
import { checkSignature, notSupported, type Signed } from "./protocolFileSignature.ts";
import { readJson } from "./protocolFileText.ts";

/** A protocol that may be used, and what tells it from every other. */
export type LoadedProtocol = {
  readonly protocol: Protocol;
  /** SHA-256 of its canonical form, 64 hexadecimal digits; none only where the platform has no digest. */
  readonly hash: string | undefined;
  /** The name of the trusted key whose signature held; none: unsigned. */
  readonly signedBy: string | undefined;
  /** The older schema that the file was written in. */
  readonly upgradedFrom?: OlderSchema;
};

/** What came of the last choice of a protocol file, in sentences. */
export type ProtocolNotice = {
  readonly kind: "done" | "refused";
  readonly text: string;
  /** Everything that is wrong with the file, in its order. */
  readonly errors: readonly string[];
};

export type ChosenFile = { readonly name: string; readonly bytes: Uint8Array };

/** What the page may do about the protocol. */
export interface ProtocolActions {
  /** A protocol file, with its signature, its owner's public key, or both; or the key alone. */
  loadProtocol(files: readonly ChosenFile[]): void;
  /** Back to the protocol that comes with the app; the trusted key is forgotten too. */
  forgetProtocol(): void;
}

export const markOf = ({ protocol, hash, signedBy }: LoadedProtocol): ProtocolMark => ({
  name: protocol.name,
  version: protocol.version,
  ...(hash === undefined ? {} : { hash }),
  ...(signedBy === undefined ? {} : { signedBy }),
});

/** JSON writes half of a surrogate pair as an escape, and nothing else of that range; RFC 8785 has no form for it. */
const HALF_PAIR = /(?:^|[^\\])(?:\\\\)*\\ud[89a-f]/u;

async function hashOf(protocol: Protocol, signatures: Signatures): Promise<Result<string, string>> {
  const text = canonicalForm(protocol);
  if (HALF_PAIR.test(text)) return fail("The file holds half of a surrogate pair, which is no text.");
  const hash = await signatures.sha256Hex(utf8Bytes(text));
  return hash.ok ? hash : fail(notSupported(hash.error.detail));
}

/** Errors of a file that was upgraded are about what it became: its own text has other paths. */
const sentencesOf = (errors: readonly ProtocolError[], from: number | undefined): readonly string[] =>
  errors.map((error) => `${from === undefined ? "" : `Upgraded from schema ${from}, `}${showProtocolError(error)}`);

/** The protocol that comes with the app, marked in the same way as a file. It is usable where nothing can be hashed. */
export async function bundledProtocol(example: Protocol, signatures: Signatures): Promise<LoadedProtocol> {
  const hash = await hashOf(example, signatures);
  return { protocol: example, hash: hash.ok ? hash.value : undefined, signedBy: undefined };
}

/** Seldom wanted, so it is no part of the start; it may be out of reach before everything is stored on the device. */
async function loadUpgrade(): Promise<Result<typeof upgradeProtocol, readonly string[]>> {
  try {
    return ok((await import("../protocol/upgrade.ts")).upgradeProtocol);
  } catch {
    return fail([
      "A part of Tragus that reads protocol files is not on this device yet. Try again with the network on.",
    ]);
  }
}

/**
 * Reads a protocol file from its bytes: text, JSON, schema, signature, shape and numbers, in that order.
 *
 * @param example completes what a file of an older schema did not say.
 *
 * Errors: sentences, everything that is wrong at the first stage that refuses it. A file whose signature does not hold
 * is refused before its content is judged.
 * Not for: judging whether the medicine is right.
 */
export async function readProtocolFile(
  file: Signed,
  example: Protocol,
  signatures: Signatures,
): Promise<Result<LoadedProtocol, readonly string[]>> {
  const json = readJson(file.bytes);
  if (!json.ok) return fail([json.error]);
  const signed = await checkSignature(file, signatures);
  if (!signed.ok) return fail([signed.error]);
  const upgrade = await loadUpgrade();
  if (!upgrade.ok) return upgrade;
  const upgraded = upgrade.value(json.value, example);
  if (!upgraded.ok) return fail(sentencesOf(upgraded.error, undefined));
  const { from } = upgraded.value;
  const protocol = validateProtocol(upgraded.value.json);
  if (!protocol.ok) return fail(sentencesOf(protocol.error, from));
  const hash = await hashOf(protocol.value, signatures);
  if (!hash.ok) return fail([hash.error]);
  const older = from === undefined ? {} : { upgradedFrom: from };
  return ok({ protocol: protocol.value, hash: hash.value, signedBy: signed.value, ...older });
}
