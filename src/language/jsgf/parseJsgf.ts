/*
 * Reader of a subset of the Java Speech Grammar Format, version 1.0.
 *
 *   #JSGF V1.0;                      header first (an encoding and a language after it are passed over)
 *   grammar name;                    one simple name; it need not be the file's name
 *   import <file.rule>;              one public rule of `file.jsgf`
 *   import <file.*>;                 all its public rules
 *   public <rule> = expansion;       may be imported and may be an entry; without `public` it may not
 *
 * Expansions, tightest first: a word (lower-case letters and apostrophes), `<rule>` or `<file.rule>`, `( )`,
 * `[ ]` optional; then `*`, `+` and `{tag}` after what they belong to (several tags may follow each other);
 * then sequences; then `|`. Comments are those of C.
 *
 * Left out on purpose, refused with the code `unsupported`: weights, quoted words, <NULL>, <VOID>, dotted
 * package names. Recursion is refused when the files are compiled.
 */
import { fail, ok, type Result } from "../../core/result.ts";
import type { GrammarFile, GrammarImport, GrammarRule } from "./grammarTree.ts";
import type { GrammarError } from "./grammarTypes.ts";
import { readExpansion } from "./readExpansion.ts";
import { ruleReferenceOf } from "./ruleNames.ts";
import { createTokenReader, type TokenReader } from "./tokenReader.ts";
import { tokeniseJsgf } from "./tokeniseJsgf.ts";

/**
 * Reads one grammar file into a tree.
 *
 * @param source the text of the file.
 * @param file   its name, for places in messages.
 * Errors: `syntax`, `unsupported`, `duplicate-rule`, each with line and column.
 * Not for: following imports or rule references (compileGrammar).
 */
export function parseJsgf(source: string, file: string): Result<GrammarFile, GrammarError> {
  const tokens = tokeniseJsgf(source, file);
  if (!tokens.ok) return tokens;
  const reader = createTokenReader(tokens.value, file);

  const name = readHead(reader);
  if (!name.ok) return name;
  const imports: GrammarImport[] = [];
  const rules = new Map<string, GrammarRule>();
  while (reader.peek() !== undefined) {
    if (reader.takeIf("text", "import")) {
      if (rules.size > 0) return fail(reader.syntax("imports stand before the first rule", reader.last()));
      const imported = readImport(reader);
      if (!imported.ok) return imported;
      imports.push(imported.value);
      continue;
    }
    const rule = readRule(reader);
    if (!rule.ok) return rule;
    const earlier = rules.get(rule.value.name);
    if (earlier !== undefined) {
      const message = `<${rule.value.name}> is already defined on line ${earlier.place.line}`;
      return fail({ code: "duplicate-rule", message, place: rule.value.place });
    }
    rules.set(rule.value.name, rule.value);
  }
  return ok({ file, name: name.value, imports, rules: [...rules.values()] });
}

function readHead(reader: TokenReader): Result<string, GrammarError> {
  const header = reader.take();
  if (header?.kind !== "header" || !/^#JSGF V1\.0(\s|$)/.test(header.text)) {
    return fail(reader.syntax("a grammar file starts with #JSGF V1.0;", header));
  }
  if (!reader.takeIf("symbol", ";")) return fail(reader.syntax("; expected after the header", reader.peek()));
  if (!reader.takeIf("text", "grammar")) return fail(reader.syntax("grammar NAME; expected", reader.peek()));
  const name = reader.take();
  if (name?.kind !== "text") return fail(reader.syntax("a grammar name expected", name));
  if (name.text.includes(".")) {
    return fail({ code: "unsupported", message: "package names are not supported", place: name.place });
  }
  if (!reader.takeIf("symbol", ";")) return fail(reader.syntax("; expected after the grammar name", reader.peek()));
  return ok(name.text);
}

function readImport(reader: TokenReader): Result<GrammarImport, GrammarError> {
  const token = reader.take();
  if (token?.kind !== "rule") return fail(reader.syntax("<file.rule> or <file.*> expected", token));
  const [, from, rule] = /^(\w[\w-]*)\.(\w+|\*)$/.exec(token.text) ?? [];
  if (from === undefined || rule === undefined) {
    return fail(reader.syntax(`<${token.text}> is not of the form <file.rule> or <file.*>`, token));
  }
  if (!reader.takeIf("symbol", ";")) return fail(reader.syntax("; expected after the import", reader.peek()));
  return ok({ from, rule, place: token.place });
}

function readRule(reader: TokenReader): Result<GrammarRule, GrammarError> {
  const isPublic = reader.takeIf("text", "public");
  const token = reader.take();
  if (token?.kind !== "rule") return fail(reader.syntax("a rule such as <name> = …; expected", token));
  const named = ruleReferenceOf(token);
  if (!named.ok) return named;
  if (named.value.qualifier !== undefined) return fail(reader.syntax("a rule is defined without its file name", token));
  if (!reader.takeIf("symbol", "=")) return fail(reader.syntax("= expected after the rule name", reader.peek()));
  const body = readExpansion(reader);
  if (!body.ok) return body;
  if (!reader.takeIf("symbol", ";")) return fail(reader.syntax("; expected at the end of the rule", reader.peek()));
  return ok({ name: named.value.name, isPublic, body: body.value, place: token.place });
}
