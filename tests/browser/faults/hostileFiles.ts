import { sha256HexHere } from "../../../src/adapters/files/webCrypto.ts";
import type { LogEntry } from "../../../src/log/chain/entry.ts";
import { sealFacts } from "../../../src/log/chain/sealFacts.ts";
import type { Fact } from "../../../src/log/facts.ts";
import { writeRecordFile } from "../../../src/log/recordFile/writeRecordFile.ts";

export type Json = Readonly<Record<string, unknown>>;
type File = { readonly entries: readonly LogEntry[] };

/**
 * A case as somebody makes it who knows the format and has a record to begin with: every fact changed as wanted, under
 * another name, and the chain made anew over it, so that it holds.
 */
export async function forged(record: string, caseId: string, change: (fact: Json) => Json): Promise<string> {
  const facts = (JSON.parse(record) as File).entries.map(({ fact }) => {
    const named = fact.type === "case.opened" ? { ...fact, caseId, label: `forged ${caseId}` } : fact;
    return change(named) as unknown as Fact;
  });
  const sealed = await sealFacts(facts, undefined, sha256HexHere());
  if (!sealed.ok) throw new Error(sealed.error);
  const label = `forged ${caseId}`;
  return writeRecordFile({ caseId, label, rehearsal: false }, sealed.value.entries);
}

/** A file whose entries carry more than their chain knows of. */
export function withMore(record: string, more: Json): string {
  const file = JSON.parse(record) as File;
  return JSON.stringify({ ...file, entries: file.entries.map((entry) => ({ ...entry, ...more })) });
}

const HEAD = '{"format":"tragus-record","v":1,"caseId":"x","label":"x","rehearsal":false,"entries":';

/** Files that are no record, and what is said of them. */
export const refusedFiles = (record: string): readonly (readonly [string, string, RegExp])[] => [
  ["empty", "", /no JSON, or cut short/u],
  ["cut short", record.slice(0, record.length - 40), /no JSON, or cut short/u],
  ["deep in brackets", "[".repeat(1_000_000), /no JSON, or cut short/u],
  ["deep and well formed", `${"[".repeat(500_000)}${"]".repeat(500_000)}`, /no record of a case/u],
  [
    "deep in a fact",
    `${HEAD}[{"n":0,"hash":"${"0".repeat(64)}","fact":${'{"a":'.repeat(50_000)}1${"}".repeat(50_000)}}]}`,
    /altered or is damaged.*Entry 0/u,
  ],
  ["naming the prototype", `{"__proto__":${record.trim()}}`, /no record of a case/u],
  ["of a later version", record.replace('"v":1', '"v":99'), /newer version \(99\)/u],
  ["with another value", record.replace(/"value":\d+/u, '"value":12'), /altered or is damaged.*Entry \d+ was altered/u],
  ["without an entry", withoutOne(record), /Entry 1 is missing/u],
  [
    "with a case put behind another",
    record.replace(/\]\}\s*$/u, `,${bodyOf(record)}]}`),
    /Entry 0 stands there again/u,
  ],
  ["millions of numbers", `${HEAD}[${"1,".repeat(3_000_000)}1]}`, /too large to be a record/u],
];

const bodyOf = (record: string): string => record.slice(record.indexOf("[") + 1, record.lastIndexOf("]"));

function withoutOne(record: string): string {
  const file = JSON.parse(record) as File;
  return JSON.stringify({ ...file, entries: file.entries.filter(({ n }) => n !== 1) });
}

/** Text that is to be shown and printed as it stands, and nothing else. */
const HOSTILE_WORDS = [
  '<img src=x onerror="globalThis.wasHit=1">',
  "</style></section><script>globalThis.wasHit=1</script>",
  '"><svg onload=globalThis.wasHit=1>',
  "=HYPERLINK(1)",
  "\u202e55 pam\u202c\u2066",
  "\u0000",
].join(" ");

/** Facts of every shape in a chain that holds, and whether they are taken. */
export const FORGERIES: readonly (readonly [string, boolean, (fact: Json) => Json])[] = [
  ["hostileText", true, (fact) => ("heard" in fact ? { ...fact, heard: HOSTILE_WORDS } : fact)],
  ["noFields", false, ({ v, id, atMs, type, ...rest }) => ({ v, id, atMs, type, ...(type === "case.opened" && rest) })],
  ["farFuture", false, (fact) => ({ ...fact, atMs: 1e300 })],
  ["prototype", true, (fact) => JSON.parse(JSON.stringify(fact).replace("{", '{"__proto__":{"wasHit":1},')) as Json],
  ["prototypeCode", true, (fact) => ("code" in fact ? { ...fact, code: "__proto__" } : fact)],
  ["objects", true, (fact) => ("value" in fact ? { ...fact, value: { wasHit: 1 }, heard: [1, 2] } : fact)],
  ["unknownKind", false, (fact) => (fact.type === "case.opened" ? fact : { ...fact, type: "constructor" })],
];
