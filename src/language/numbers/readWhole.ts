import { fail, ok, type Result } from "../../core/result.ts";
import type { NumberError } from "./numberError.ts";
import type { NumberToken } from "./numberWords.ts";

/** Long enough for a telephone number, short enough for exact arithmetic. */
const MAX_DIGITS = 7;

type Tokens = readonly NumberToken[];
type Read = Result<number, NumberError>;

const misfit = (at: number): Read => fail({ kind: "not-one-number", at });

/** A whole number in any accepted form; see `wordsToNumber`. All words must belong to it. */
export function readWhole(tokens: Tokens): Read {
  if (tokens.every((t) => t.kind === "digit")) return readDigits(tokens);
  const thousand = tokens.findIndex((t) => t.kind === "thousand");
  return thousand < 0 ? readBelowThousand(tokens, 0, true) : readThousands(tokens, thousand);
}

function readDigits(tokens: Tokens): Read {
  if (tokens.length > MAX_DIGITS) return fail({ kind: "too-many-digits", max: MAX_DIGITS });
  return ok(tokens.reduce((sum, t) => 10 * sum + (t.kind === "digit" ? t.value : 0), 0));
}

/** "two thousand", "a thousand and five", "fifteen thousand two fifty". */
function readThousands(tokens: Tokens, thousand: number): Read {
  const head = thousand === 1 && tokens[0]?.kind === "a" ? ok(1) : readRest(tokens.slice(0, thousand), 0);
  if (!head.ok) return head;
  const after = thousand + 1;
  if (tokens.length === after) return ok(1000 * head.value);
  const rest =
    tokens[after]?.kind === "and"
      ? readRest(tokens.slice(after + 1), after + 1)
      : readBelowThousand(tokens.slice(after), after, false);
  return rest.ok ? ok(1000 * head.value + rest.value) : rest;
}

/** 1 to 999 (to 1999 with "eleven hundred" and the like). `from` is where the tokens stand in the number. */
function readBelowThousand(tokens: Tokens, from: number, teenHundreds: boolean): Read {
  const [head, second] = tokens;
  if (second?.kind === "hundred") {
    const hundreds = countOfHundreds(head, teenHundreds);
    if (hundreds === undefined) return misfit(from);
    if (tokens.length === 2) return ok(100 * hundreds);
    const skip = tokens[2]?.kind === "and" ? 3 : 2;
    const rest = readRest(tokens.slice(skip), from + skip);
    return rest.ok ? ok(100 * hundreds + rest.value) : rest;
  }
  if (head?.kind === "digit" && head.value > 0 && tokens.length > 1) {
    // "one twenty", and after a thousand also "two oh five".
    const oh = second?.kind === "digit" && second.value === 0;
    if (second?.kind === "digit" && !oh) return misfit(from + 1);
    const skip = oh ? 2 : 1;
    if (oh && tokens[2]?.kind !== "digit") return misfit(from + 2);
    const rest = readRest(tokens.slice(skip), from + skip);
    return rest.ok ? ok(100 * head.value + rest.value) : rest;
  }
  return readRest(tokens, from);
}

function countOfHundreds(head: NumberToken | undefined, teenHundreds: boolean): number | undefined {
  if (head?.kind === "a") return 1;
  if (head?.kind === "digit" && head.value > 0) return head.value;
  // "ten hundred" is not said; "twenty five hundred" could be 20 and 500.
  if (teenHundreds && head?.kind === "teen" && head.value > 10) return head.value;
  return undefined;
}

/** 1 to 99: "five", "fifteen", "fifty", "fifty five". */
function readRest(tokens: Tokens, from: number): Read {
  const [first, second] = tokens;
  if (first === undefined || !("value" in first) || first.value === 0) return misfit(from);
  if (second === undefined) return ok(first.value);
  if (first.kind !== "ten" || second.kind !== "digit" || second.value === 0) return misfit(from + 1);
  return tokens.length === 2 ? ok(first.value + second.value) : misfit(from + 2);
}
