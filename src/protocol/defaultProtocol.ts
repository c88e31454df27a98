import json from "./defaultProtocol.json" with { type: "json" };
import type { Protocol } from "./protocol.ts";
import { validateProtocol } from "./validate.ts";

function validated(): Protocol {
  const result = validateProtocol(json);
  // Built in and tested: a fault here is a fault of the build, and nothing may run on it.
  if (!result.ok) throw new Error(`built-in protocol: ${JSON.stringify(result.error)}`);
  return result.value;
}

/** The protocol that is used until a service brings its own. An unapproved example. */
export const defaultProtocol: Protocol = validated();
