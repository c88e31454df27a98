import { fail, ok, type Result } from "../../core/result.ts";
import type { GrammarFile, GrammarRule, RuleReference } from "./grammarTree.ts";
import type { GrammarError } from "./grammarTypes.ts";
import type { GrammarFiles } from "./loadFiles.ts";
import { referencesIn } from "./walkExpansion.ts";

/** Which rule each written reference means; keyed by the reference itself. */
export type ResolvedRules = ReadonlyMap<RuleReference, GrammarRule>;

/**
 * Finds the rule behind every reference in every file.
 *
 * Errors: `unknown-rule`; `private-rule` for a qualified reference to a rule that is not public;
 * `unknown-import` for a qualifier that is not imported; `duplicate-rule` where a bare name could mean two rules.
 */
export function resolveRules(files: GrammarFiles): Result<ResolvedRules, GrammarError> {
  const resolved = new Map<RuleReference, GrammarRule>();
  for (const [key, file] of files) {
    const scope = rulesInScope(files, key, file);
    for (const rule of file.rules) {
      for (const reference of referencesIn(rule.body)) {
        const found = findRule(files, key, file, scope, reference);
        if (!found.ok) return found;
        resolved.set(reference, found.value);
      }
    }
  }
  return ok(resolved);
}

type Candidate = { readonly key: string; readonly rule: GrammarRule };
type Scope = ReadonlyMap<string, readonly Candidate[]>;

function findRule(
  files: GrammarFiles,
  key: string,
  file: GrammarFile,
  scope: Scope,
  { qualifier, name, place }: RuleReference,
): Result<GrammarRule, GrammarError> {
  const isImported = file.imports.some((i) => i.from === qualifier);
  if (qualifier !== undefined && qualifier !== key && !isImported) {
    return fail({ code: "unknown-import", message: `${qualifier} is not imported here`, place });
  }
  const written = qualifier === undefined ? name : `${qualifier}.${name}`;
  const candidates = (scope.get(name) ?? []).filter((c) => qualifier === undefined || c.key === qualifier);
  const rules = new Set(candidates.map((c) => c.rule));
  const [first, second] = rules;
  if (first !== undefined && second === undefined) return ok(first);
  if (first !== undefined) {
    const keys = candidates.map((c) => c.key).join(" and ");
    return fail({ code: "duplicate-rule", message: `<${written}> could be the rule of ${keys}; qualify it`, place });
  }
  const hidden = qualifier !== undefined && files.get(qualifier)?.rules.some((r) => r.name === name && !r.isPublic);
  if (hidden === true) return fail({ code: "private-rule", message: `<${written}> is not public`, place });
  return fail({ code: "unknown-rule", message: `no rule <${written}> is defined or imported here`, place });
}

/** The file's own rules and the public ones that it imports, by name. */
function rulesInScope(files: GrammarFiles, key: string, file: GrammarFile): Scope {
  const scope = new Map<string, Candidate[]>();
  const add = (candidate: Candidate): void => {
    const sameName = scope.get(candidate.rule.name);
    if (sameName === undefined) scope.set(candidate.rule.name, [candidate]);
    else sameName.push(candidate);
  };
  for (const rule of file.rules) add({ key, rule });
  for (const { from, rule: wanted } of file.imports) {
    for (const rule of files.get(from)?.rules ?? []) {
      if (rule.isPublic && (wanted === "*" || wanted === rule.name)) add({ key: from, rule });
    }
  }
  return scope;
}
