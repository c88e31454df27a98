import { fail, ok, type Result } from "../../core/result.ts";
import type { GrammarError, GrammarPlace } from "./grammarTypes.ts";

export type JsgfToken = {
  /** text: a bare word or keyword; rule: the inside of `<…>`; tag: the inside of `{…}`; symbol: one of `= | ( ) [ ] * + ;`. */
  readonly kind: "header" | "text" | "rule" | "tag" | "symbol";
  readonly text: string;
  readonly place: GrammarPlace;
};

const PIECES: readonly {
  readonly kind: JsgfToken["kind"] | "skip";
  readonly pattern: RegExp;
  readonly inside: boolean;
}[] = [
  { kind: "skip", pattern: /\s+|\/\/[^\n]*|\/\*[^]*?\*\//y, inside: false },
  { kind: "header", pattern: /#[^;\n]*/y, inside: false },
  { kind: "text", pattern: /[A-Za-z0-9_'.-]+/y, inside: false },
  { kind: "rule", pattern: /<[^<>;{}\n]*>/y, inside: true },
  { kind: "tag", pattern: /\{[^{}]*\}/y, inside: true },
  { kind: "symbol", pattern: /[=|()[\]*+;]/y, inside: false },
];

/**
 * Cuts a grammar file into tokens; comments and white space are dropped.
 *
 * Errors: `syntax` for a character that starts nothing, an unclosed comment, `<` or `{`; `unsupported` for
 * quoted words and weights. Not for: deciding whether the tokens make sense in their order (parseJsgf).
 */
export function tokeniseJsgf(source: string, file: string): Result<readonly JsgfToken[], GrammarError> {
  const tokens: JsgfToken[] = [];
  let at = source.startsWith("\uFEFF") ? 1 : 0;
  let line = 1;
  let lineStart = at;
  while (at < source.length) {
    const place = { file, line, column: at - lineStart + 1 };
    const piece = pieceAt(source, at);
    if (piece === undefined) return fail(refusal(source, at, place));
    if (piece.kind !== "skip") tokens.push({ kind: piece.kind, text: piece.text, place });
    for (let i = source.indexOf("\n", at); i >= 0 && i < piece.end; i = source.indexOf("\n", i + 1)) {
      line++;
      lineStart = i + 1;
    }
    at = piece.end;
  }
  return ok(tokens);
}

function pieceAt(source: string, at: number) {
  for (const { kind, pattern, inside } of PIECES) {
    pattern.lastIndex = at;
    const found = pattern.exec(source)?.[0];
    if (found !== undefined) {
      return { kind, text: inside ? found.slice(1, -1).trim() : found.trim(), end: at + found.length };
    }
  }
  return undefined;
}

function refusal(source: string, at: number, place: GrammarPlace): GrammarError {
  const sign = String.fromCodePoint(source.codePointAt(at) ?? 0);
  if (sign === '"')
    return { code: "unsupported", message: "quoted words are not supported; write the bare word", place };
  if (source.startsWith("/*", at)) return { code: "syntax", message: "this comment is never closed", place };
  if (sign === "/") return { code: "unsupported", message: "weights are not supported", place };
  if (sign === "<") return { code: "syntax", message: "this rule name is never closed with >", place };
  if (sign === "{") return { code: "syntax", message: "this tag is never closed with }", place };
  return { code: "syntax", message: `unexpected character ${sign}`, place };
}
