import { readFileSync } from "node:fs";
import { signaturesHere } from "../adapters/files/webCrypto.ts";
import type { AppContext } from "../app/context.ts";
import { compileGrammars } from "../app/compileGrammars.ts";
import { bundledProtocol, markOf, readProtocolFile, type LoadedProtocol } from "../app/protocolFile.ts";
import { fail, ok, type Result } from "../core/result.ts";
import { defaultProtocol } from "../protocol/defaultProtocol.ts";
import { readGrammarSources } from "./readGrammars.ts";

/** Files by path; without a protocol, the bundled one. */
export type ProtocolPaths = {
  readonly protocol?: string | undefined;
  readonly signature?: string | undefined;
  /** PEM of the public key that is trusted. */
  readonly key?: string | undefined;
};

const firstOf = ([first = "", ...rest]: readonly string[]): string =>
  rest.length === 0 ? first : `${first}; and ${rest.length} more`;

/** The protocol of these files, or the one that comes with Tragus. Errors: one line that names the file. */
export async function loadProtocol({
  protocol,
  signature,
  key,
}: ProtocolPaths): Promise<Result<LoadedProtocol, string>> {
  if (protocol === undefined) {
    if (signature === undefined && key === undefined)
      return ok(await bundledProtocol(defaultProtocol, signaturesHere()));
    return fail("--signature and --key belong to a --protocol file; none is given");
  }
  try {
    const file = {
      bytes: readFileSync(protocol),
      ...(signature === undefined ? {} : { signature: readFileSync(signature) }),
      ...(key === undefined ? {} : { trustedKey: readFileSync(key, "utf8") }),
    };
    const read = await readProtocolFile(file, defaultProtocol, signaturesHere());
    return read.ok ? read : fail(`protocol file ${protocol}: ${firstOf(read.error)}`);
  } catch (error) {
    return fail(`protocol file ${protocol}: ${error instanceof Error ? error.message : String(error)}`);
  }
}

/**
 * Puts together what a case in the terminal runs on.
 *
 * Errors: one line that names the file: it cannot be read, its signature does not hold, or the first thing that is wrong
 * with it and how many more there are.
 */
export async function loadContext(paths: ProtocolPaths): Promise<Result<AppContext, string>> {
  const loaded = await loadProtocol(paths);
  if (!loaded.ok) return loaded;
  const grammars = compileGrammars(readGrammarSources());
  if (!grammars.ok) {
    const { file, line, column } = grammars.error.place;
    return fail(`grammars/${file}.jsgf:${line}:${column}: ${grammars.error.message}`);
  }
  return ok({ protocol: loaded.value.protocol, mark: markOf(loaded.value), grammars: grammars.value });
}
