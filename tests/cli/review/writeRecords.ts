/**
 * Writes the invented records of `tests/cli/review/records` anew: cases said line by line to the app, each under a protocol
 * mark that no protocol has, so that they do not change with the example. One is cut off, and one altered.
 *
 *   npx tsx tests/cli/review/writeRecords.ts
 */
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { createMemoryFactStore } from "../../../src/adapters/storage/memoryFactStore.ts";
import { sha256HexHere } from "../../../src/adapters/files/webCrypto.ts";
import { loadContext } from "../../../src/cli/loadContext.ts";
import { readTalkLine } from "../../../src/cli/talkLine.ts";
import { TerminalCase } from "../../../src/cli/terminalCase.ts";
import { caseLabel } from "../../../src/log/caseLabel.ts";
import { sealFacts } from "../../../src/log/chain/sealFacts.ts";
import type { Fact } from "../../../src/log/facts.ts";
import { writeRecordFile } from "../../../src/log/recordFile/writeRecordFile.ts";

const FOLDER = join(import.meta.dirname, "records");
const MARK = { name: "Invented service", version: "7", hash: "c7".repeat(32) };

const CASES: Readonly<Record<string, { readonly rehearsal?: true; readonly lines: readonly string[] }>> = {
  "2026-05-first": {
    lines: [
      "[0:00] forty five year old man",
      "[1:00] one thirty over eighty five, sats ninety eight",
      "[3:00] i c p eighteen",
      "one eight",
      "[4:30] ketamine one hundred milligrams given",
      "affirm",
      "[4:40] rocuronium eighty milligrams given",
      "affirm",
      "[6:00] blade in",
      "[6:35] tube in",
      "[6:50] end tidal thirty seven",
      "[7:00] tube confirmed",
      "[8:00] one hundred over sixty, sats ninety six, i c p twenty",
      "[10:00] end tidal thirty three",
      "[11:00] midazolam two milligrams given",
      "affirm",
      "[12:00] one twenty over seventy five, i c p eighteen",
      "[14:00] end tidal thirty seven",
    ],
  },
  "2026-05-second": {
    lines: [
      "[0:00] sixty two year old woman",
      "[1:00] one forty over ninety, sats ninety five",
      "[2:00] next",
      "waive no time",
      "[5:00] ketamine one hundred milligrams given",
      "affirm",
      "[6:00] blade in",
      "[6:50] out",
      "[7:00] sats eighty six",
      "[8:00] blade in",
      "[8:40] tube confirmed",
      "[9:00] eighty five over fifty, sats ninety four",
      "[13:00] one ten over seventy",
      "disregard",
      "[14:00] one fifteen over seventy",
    ],
  },
  "2026-05-taught": {
    rehearsal: true,
    lines: [
      "[0:00] thirty five year old man",
      "[1:00] one twenty over eighty",
      "[2:00] blade in",
      "[2:30] tube confirmed",
    ],
  },
};

async function factsOf(lines: readonly string[], caseId: string): Promise<readonly Fact[]> {
  const context = await loadContext({});
  if (!context.ok) throw new Error(context.error);
  const store = createMemoryFactStore();
  const talk = new TerminalCase(context.value, store, caseId, Date.UTC(2026, 4, 9, 10));
  await talk.start();
  for (const raw of lines) {
    const line = readTalkLine(raw);
    if (!line.ok) throw new Error(line.error);
    if (line.value.atMs !== undefined) await talk.advanceTo(line.value.atMs);
    const heard = { by: "typed", candidates: [{ words: line.value.text, score: 0 }], endedAtMs: 0 } as const;
    const { answer } = await talk.hear(heard, line.value.text);
    if (!["recorded", "asked", "answered"].includes(answer.outcome))
      throw new Error(`${raw}: ${answer.outcome}: ${answer.reply}`);
  }
  const stored = await store.load();
  if (!stored.ok) throw new Error(stored.error.kind);
  return stored.value;
}

/** What the tool said and raised by itself is most of a record, and no measure looks at it. */
const isSaidByTool = ({ type }: Fact): boolean => type.startsWith("alert.") || type.startsWith("speech.");

let n = 470;
for (const [name, { rehearsal = false, lines }] of Object.entries(CASES)) {
  const label = caseLabel(n++);
  const said = (await factsOf(lines, name)).filter((fact) => !isSaidByTool(fact));
  const facts = said.map((fact): Fact => {
    return fact.type === "case.opened" ? { ...fact, label, rehearsal, protocol: MARK } : fact;
  });
  const sealed = await sealFacts(facts, undefined, sha256HexHere());
  if (!sealed.ok) throw new Error(sealed.error);
  const text = writeRecordFile({ caseId: name, label, rehearsal }, sealed.value.entries);
  writeFileSync(join(FOLDER, `${name}.json`), text);
  if (name !== "2026-05-first") continue;
  writeFileSync(join(FOLDER, "2026-06-altered.json"), text.replace('"value":85', '"value":95'));
  writeFileSync(join(FOLDER, "2026-06-cut-off.json"), text.slice(0, 1500));
}
