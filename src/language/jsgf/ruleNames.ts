import { fail, ok, type Result } from "../../core/result.ts";
import type { RuleReference } from "./grammarTree.ts";
import type { GrammarError } from "./grammarTypes.ts";
import type { JsgfToken } from "./tokeniseJsgf.ts";

/** Reads `<name>` or `<file.name>`. Errors: `unsupported` for <NULL> and <VOID>, `syntax` for any other shape. */
export function ruleReferenceOf(token: JsgfToken): Result<RuleReference, GrammarError> {
  const { text, place } = token;
  if (text === "NULL" || text === "VOID") {
    return fail({ code: "unsupported", message: `<${text}> is not supported`, place });
  }
  const [, qualifier, name] = /^(?:(\w[\w-]*)\.)?(\w+)$/.exec(text) ?? [];
  if (name === undefined) return fail({ code: "syntax", message: `<${text}> is not a rule name`, place });
  return ok({ kind: "rule", ...(qualifier !== undefined && { qualifier }), name, place });
}
