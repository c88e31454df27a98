import { readFileSync } from "node:fs";
import type { AppContext } from "../app/context.ts";
import { compileGrammars } from "../app/compileGrammars.ts";
import { fail, ok, type Result } from "../core/result.ts";
import { defaultProtocol } from "../protocol/defaultProtocol.ts";
import type { Protocol } from "../protocol/protocol.ts";
import { validateProtocol } from "../protocol/validate.ts";
import { readGrammarSources } from "./readGrammars.ts";

function readProtocol(file: string | undefined): Result<Protocol, string> {
  if (file === undefined) return ok(defaultProtocol);
  let json: unknown;
  try {
    json = JSON.parse(readFileSync(file, "utf8"));
  } catch (error) {
    return fail(`protocol file ${file}: ${error instanceof Error ? error.message : String(error)}`);
  }
  const protocol = validateProtocol(json);
  if (protocol.ok) return protocol;
  const [first] = protocol.error;
  return fail(`protocol file ${file}: ${first === undefined ? "not valid" : `${first.path}: ${first.message}`}`);
}

/** The protocol and the compiled grammars of a terminal case; an error is one line for the user. */
export function loadContext(protocolFile: string | undefined): Result<AppContext, string> {
  const protocol = readProtocol(protocolFile);
  if (!protocol.ok) return protocol;
  const grammars = compileGrammars(readGrammarSources());
  if (!grammars.ok) {
    const { file, line, column } = grammars.error.place;
    return fail(`grammars/${file}.jsgf:${line}:${column}: ${grammars.error.message}`);
  }
  return ok({ protocol: protocol.value, grammars: grammars.value });
}
