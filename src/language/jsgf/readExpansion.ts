import { fail, ok, type Result } from "../../core/result.ts";
import type { Expansion } from "./grammarTree.ts";
import type { GrammarError } from "./grammarTypes.ts";
import { ruleReferenceOf } from "./ruleNames.ts";
import type { TokenReader } from "./tokenReader.ts";

type Read = Result<Expansion, GrammarError>;

/** Words are what a dictionary can hold: lower-case letters, with apostrophes inside or after them. */
const WORD = /^[a-z][a-z']*$/;

/** Reads alternatives up to the token that closes them (`;`, `)`, `]`), which is left for the caller. */
export function readExpansion(reader: TokenReader): Read {
  const options: Expansion[] = [];
  do {
    const option = readSequence(reader);
    if (!option.ok) return option;
    options.push(option.value);
  } while (reader.takeIf("symbol", "|"));
  const [only] = options;
  return ok(options.length === 1 && only !== undefined ? only : { kind: "choice", options });
}

function readSequence(reader: TokenReader): Read {
  const parts: Expansion[] = [];
  for (;;) {
    const token = reader.peek();
    const ends = token === undefined || (token.kind === "symbol" && [";", "|", ")", "]"].includes(token.text));
    if (ends) break;
    const part = readPart(reader);
    if (!part.ok) return part;
    parts.push(part.value);
  }
  const [first] = parts;
  if (first === undefined) return fail(reader.syntax("words, a rule or a group expected", reader.peek()));
  return ok(parts.length === 1 ? first : { kind: "sequence", parts });
}

/** One word, rule or group with the repeat marks and tags after it. */
function readPart(reader: TokenReader): Read {
  const atom = readAtom(reader);
  if (!atom.ok) return atom;
  let part = atom.value;
  let isRepeated = false;
  for (;;) {
    const token = reader.peek();
    if (token?.kind === "tag") {
      if (token.text === "") return fail(reader.syntax("this tag is empty", token));
      reader.take();
      part =
        part.kind === "tagged"
          ? { ...part, tags: [...part.tags, token.text] }
          : { kind: "tagged", body: part, tags: [token.text] };
    } else if (token?.kind === "symbol" && (token.text === "*" || token.text === "+")) {
      if (isRepeated) return fail(reader.syntax("one repeat mark is enough", token));
      reader.take();
      isRepeated = true;
      part = { kind: "repeat", body: part, atLeast: token.text === "*" ? 0 : 1, place: token.place };
    } else {
      return ok(part);
    }
  }
}

function readAtom(reader: TokenReader): Read {
  const token = reader.take();
  if (token?.kind === "rule") return ruleReferenceOf(token);
  if (token?.kind === "text") {
    if (WORD.test(token.text)) return ok({ kind: "word", word: token.text, place: token.place });
    return fail(reader.syntax("words are lower-case letters and apostrophes", token));
  }
  if (token?.kind === "symbol" && (token.text === "(" || token.text === "[")) {
    const body = readExpansion(reader);
    if (!body.ok) return body;
    const close = token.text === "(" ? ")" : "]";
    if (!reader.takeIf("symbol", close)) {
      return fail(reader.syntax(`${close} expected for the ${token.text} on line ${token.place.line}`, reader.peek()));
    }
    return ok(close === ")" ? body.value : { kind: "optional", body: body.value });
  }
  return fail(reader.syntax("words, a rule or a group expected", token));
}
