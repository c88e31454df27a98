import { fail, ok, type Result } from "../../core/result.ts";
import type { GrammarFile } from "./grammarTree.ts";
import type { GrammarError } from "./grammarTypes.ts";
import { parseJsgf } from "./parseJsgf.ts";

/** Grammar files by key (file name without ".jsgf"). */
export type GrammarFiles = ReadonlyMap<string, GrammarFile>;

/**
 * Reads the entry file and every file it imports, directly or not; other sources are not looked at.
 *
 * Errors: those of parseJsgf; `unknown-import`, `unknown-rule` and `private-rule` at the import that asks for it.
 */
export function loadFiles(
  sources: Readonly<Record<string, string>>,
  entry: string,
): Result<GrammarFiles, GrammarError> {
  const files = new Map<string, GrammarFile>();
  const waiting = [entry];
  for (let key = waiting.pop(); key !== undefined; key = waiting.pop()) {
    if (files.has(key)) continue;
    const source = Object.hasOwn(sources, key) ? sources[key] : undefined;
    if (source === undefined) {
      const place = { file: `${key}.jsgf`, line: 1, column: 1 };
      return fail({ code: "unknown-import", message: `there is no grammar file ${key}.jsgf`, place });
    }
    const parsed = parseJsgf(source, `${key}.jsgf`);
    if (!parsed.ok) return parsed;
    files.set(key, parsed.value);
    for (const { from, place } of parsed.value.imports) {
      if (!Object.hasOwn(sources, from)) {
        return fail({ code: "unknown-import", message: `there is no grammar file ${from}.jsgf`, place });
      }
      waiting.push(from);
    }
  }
  const problem = importProblem(files);
  return problem === undefined ? ok(files) : fail(problem);
}

function importProblem(files: GrammarFiles): GrammarError | undefined {
  for (const file of files.values()) {
    for (const { from, rule, place } of file.imports) {
      if (rule === "*") continue;
      const wanted = files.get(from)?.rules.find((r) => r.name === rule);
      if (wanted === undefined) {
        return { code: "unknown-rule", message: `${from}.jsgf has no rule <${rule}>`, place };
      }
      if (!wanted.isPublic) {
        return { code: "private-rule", message: `<${rule}> of ${from}.jsgf is not public`, place };
      }
    }
  }
  return undefined;
}
