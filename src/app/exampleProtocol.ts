import { fail, type Result } from "../core/result.ts";
import type { Protocol } from "../protocol/protocol.ts";
import { showProtocolError } from "../protocol/protocolError.ts";
import { validateProtocol } from "../protocol/validate.ts";
import { readJson } from "./protocolFileText.ts";

/**
 * The protocol that comes with the app, from the bytes of the file that holds it.
 *
 * Errors: sentences, everything that is wrong with it. Nothing may run without it: it counts where the user chose no
 * other, and it completes files of older schemas.
 * Not for: files of the user's, which may be signed and of an older schema.
 */
export function readExampleProtocol(bytes: Uint8Array): Result<Protocol, readonly string[]> {
  const json = readJson(bytes);
  if (!json.ok) return fail([json.error]);
  const protocol = validateProtocol(json.value);
  return protocol.ok ? protocol : fail(protocol.error.map(showProtocolError));
}
