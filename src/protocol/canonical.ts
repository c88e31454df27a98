import canonicalize from "canonicalize";
import type { Protocol } from "./protocol.ts";

/**
 * A protocol as text that is the same whatever the order of its keys and its spacing were: RFC 8785 (JSON
 * Canonicalization Scheme).
 *
 * Its SHA-256 tells which protocol a case ran on.
 * Not for: checking a signature. That is over the bytes of the file as they came.
 */
export function canonicalForm(protocol: Protocol): string {
  const text = canonicalize(protocol);
  // Only for `undefined`, functions and symbols is there no text.
  if (text === undefined) throw new Error("a protocol has no canonical form");
  return text;
}
