import { fail, ok, type Result } from "../core/result.ts";
import { errorsOf, type ProtocolError } from "./protocolError.ts";
import type { Protocol } from "./protocol.ts";
import { readShape } from "./shapeFaults.ts";
import { unsayableBands } from "./upgrade/bandsOne.ts";
import { schemaOne } from "./upgrade/schemaOne.ts";
import { schemaTwo } from "./upgrade/schemaTwo.ts";
import { upgradeOne } from "./upgrade/upgradeOne.ts";
import { upgradeTwo } from "./upgrade/upgradeTwo.ts";

const NEWEST = 3;

/** The schemas that are not written any more. */
export type OlderSchema = 1 | 2;

/** `from`: the schema that the file was written in, where it is not the newest. */
export type Upgraded = { readonly json: unknown; readonly from?: OlderSchema };

function fromOne(json: unknown, example: Protocol): Result<Protocol, readonly ProtocolError[]> {
  const shape = readShape(schemaOne, json);
  if ("faults" in shape) return fail(errorsOf(json, shape.faults));
  const faults = unsayableBands(shape.output);
  return faults.length === 0 ? ok(upgradeOne(shape.output, example)) : fail(errorsOf(json, faults));
}

function fromTwo(json: unknown, example: Protocol): Result<Protocol, readonly ProtocolError[]> {
  const shape = readShape(schemaTwo, json);
  return "faults" in shape ? fail(errorsOf(json, shape.faults)) : ok(upgradeTwo(shape.output, example));
}

/**
 * Brings a protocol file of an older schema to the newest one.
 *
 * @param json    parsed JSON of unknown origin.
 * @param example what an older file did not say is completed from it.
 * @returns       a file of the newest schema, not yet validated; one that is of the newest schema already, or no
 *                group of entries at all, as it came.
 *
 * Errors: a schema that is missing, odd or newer than this version knows; faults of shape in an older file; bands of
 * schema 1 that schema 2 cannot say. Nothing is dropped silently.
 */
export function upgradeProtocol(json: unknown, example: Protocol): Result<Upgraded, readonly ProtocolError[]> {
  if (typeof json !== "object" || json === null || Array.isArray(json)) return ok({ json });
  const schema = "schema" in json ? json.schema : undefined;
  const refuse = (message: string) => fail([{ path: "schema", message }]);
  if (schema === undefined) return refuse(`is missing: it says how to read the rest; the newest is ${NEWEST}`);
  if (typeof schema !== "number" || !Number.isInteger(schema) || schema < 1)
    return refuse(`must be a whole number from 1 to ${NEWEST}, not ${JSON.stringify(schema).slice(0, 40)}`);
  if (schema > NEWEST)
    return refuse(`${schema} is newer than ${NEWEST}, the newest that this version of the app can read`);
  if (schema === NEWEST) return ok({ json });
  const from: OlderSchema = schema === 1 ? 1 : 2;
  const upgraded = from === 1 ? fromOne(json, example) : fromTwo(json, example);
  return upgraded.ok ? ok({ json: upgraded.value, from }) : upgraded;
}
