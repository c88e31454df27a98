import type { GrammarError } from "./grammarTypes.ts";
import type { JsgfToken } from "./tokeniseJsgf.ts";

/** Walks over tokens once, one token of look-ahead, and says where a problem is. */
export type TokenReader = {
  peek(): JsgfToken | undefined;
  take(): JsgfToken | undefined;
  takeIf(kind: JsgfToken["kind"], text: string): boolean;
  last(): JsgfToken | undefined;
  /** A syntax error at that token; at the last one when the file ended too soon. */
  syntax(message: string, at: JsgfToken | undefined): GrammarError;
};

export function createTokenReader(tokens: readonly JsgfToken[], file: string): TokenReader {
  let next = 0;
  return {
    peek: () => tokens[next],
    take: () => tokens[next++],
    takeIf(kind, text) {
      const token = tokens[next];
      const found = token?.kind === kind && token.text === text;
      if (found) next++;
      return found;
    },
    last: () => tokens[next - 1],
    syntax(message, at) {
      if (at !== undefined) return { code: "syntax", message: `${message}; found ${shown(at)}`, place: at.place };
      const place = tokens.at(-1)?.place ?? { file, line: 1, column: 1 };
      return { code: "syntax", message: `${message}; the file ends here`, place };
    },
  };
}

function shown(token: JsgfToken): string {
  if (token.kind === "rule") return `<${token.text}>`;
  return token.kind === "tag" ? `{${token.text}}` : token.text;
}
