import * as v from "valibot";
import { fail, ok, type Result } from "../core/result.ts";
import { crossCheck, type ProtocolError } from "./crossChecks.ts";
import type { Protocol } from "./protocol.ts";
import { protocolSchema } from "./schema.ts";

/**
 * The one door for a protocol file: shape first, then what its numbers must be to one another.
 *
 * @param json parsed JSON of unknown origin.
 * @returns    the protocol, or everything that is wrong with it.
 *
 * Not for: judging whether the medicine is right. That is its owner's to sign.
 */
export function validateProtocol(json: unknown): Result<Protocol, readonly ProtocolError[]> {
  const shape = v.safeParse(protocolSchema, json);
  if (!shape.success)
    return fail(shape.issues.map((issue) => ({ path: v.getDotPath(issue) ?? "", message: issue.message })));
  const errors = crossCheck(shape.output);
  return errors.length === 0 ? ok(shape.output) : fail(errors);
}
