import { fail, ok, type Result } from "../core/result.ts";
import { utf8Text } from "./protocolFileBytes.ts";

/** Far more than any protocol; less than what would hold up a page. */
const MOST_BYTES = 1_000_000;

const TOKEN = /"[^"\\]*(?:\\.[^"\\]*)*"|[{}[\]:,]/gsu;

function lineOf(text: string, offset: number): string {
  const before = text.slice(0, offset).split("\n");
  return `line ${before.length}, column ${(before.at(-1) ?? "").length + 1}`;
}

/**
 * An entry that stands twice in one group: JSON keeps the last of them without a word, and a reader may have seen the
 * first. Only for text that parses.
 */
function repeatedKey(text: string): string | undefined {
  const groups: (Set<string> | undefined)[] = [];
  let waiting: string | undefined;
  for (const { 0: token, index } of text.matchAll(TOKEN)) {
    if (token === "{") groups.push(new Set());
    else if (token === "[") groups.push(undefined);
    else if (token === "}" || token === "]") groups.pop();
    else if (token === ":" && waiting !== undefined) {
      const keys = groups.at(-1);
      const key = JSON.parse(waiting) as string;
      if (keys?.has(key))
        return `The file has the entry ${waiting} twice in one group, the second before ${lineOf(text, index)}.`;
      keys?.add(key);
    }
    waiting = token.startsWith('"') ? token : undefined;
  }
  return undefined;
}

/** The engine's own words differ; where they name a place, the place is kept. */
function notJson(text: string, thrown: unknown): string {
  const words = String(thrown);
  const offset = /position (\d+)/u.exec(words)?.[1];
  const place = /line (\d+) column (\d+)/u.exec(words);
  if (text.trim() === "") return "The file is empty.";
  if (/end of (?:JSON|data|input)|unterminated/iu.test(words)) return "The file is not JSON: it ends too early.";
  if (offset !== undefined) return `The file is not JSON: see ${lineOf(text, Number(offset))}.`;
  if (place !== null) return `The file is not JSON: see line ${place[1] ?? ""}, column ${place[2] ?? ""}.`;
  return "The file is not JSON.";
}

/**
 * The bytes of a file as JSON.
 *
 * Errors: one sentence: too large, not UTF-8, not JSON, with the place where the engine names it, or with an entry that
 * stands twice.
 */
export function readJson(bytes: Uint8Array): Result<unknown, string> {
  if (bytes.length > MOST_BYTES)
    return fail(`The file has ${bytes.length} bytes; a protocol has at most ${MOST_BYTES}.`);
  const text = utf8Text(bytes);
  if (text === undefined) return fail("The file is not text in UTF-8.");
  try {
    const json: unknown = JSON.parse(text);
    const repeated = repeatedKey(text);
    return repeated === undefined ? ok(json) : fail(repeated);
  } catch (thrown) {
    return fail(notJson(text, thrown));
  }
}
