import { fail, ok, type Result } from "../core/result.ts";
import { crossCheck } from "./crossChecks.ts";
import type { Protocol } from "./protocol.ts";
import { errorsOf, type ProtocolError } from "./protocolError.ts";
import { protocolSchema } from "./schema/protocolSchema.ts";
import { readShape } from "./shapeFaults.ts";

/**
 * The one door for a protocol file: shape first, then what its numbers must be to one another.
 *
 * @param json parsed JSON of unknown origin.
 * @returns    the protocol.
 *
 * Errors: everything that is wrong with it, in the order of the file. While its shape is wrong, its numbers are not
 * compared with one another.
 * Not for: judging whether the medicine is right. That is its owner's to sign.
 */
export function validateProtocol(json: unknown): Result<Protocol, readonly ProtocolError[]> {
  if (typeof json !== "object" || json === null || Array.isArray(json))
    return fail([{ path: "", message: "is not a protocol file: it must be a group of named entries" }]);
  const shape = readShape(protocolSchema, json);
  if ("faults" in shape) return fail(errorsOf(json, shape.faults));
  const faults = crossCheck(shape.output);
  return faults.length === 0 ? ok(shape.output) : fail(errorsOf(json, faults));
}
