import { randomUUID } from "node:crypto";
import { createInterface } from "node:readline";
import { parseArgs } from "node:util";
import { createMemoryFactStore } from "../adapters/storage/memoryFactStore.ts";
import { loadContext, type ProtocolPaths } from "./loadContext.ts";
import { readTalkLine } from "./talkLine.ts";
import { TerminalCase, type AnswerLine, type SpokeLine } from "./terminalCase.ts";

const USAGE = "usage: npm run talk -- [--json] [--protocol FILE [--signature FILE --key FILE]]";

const MESSAGE_MAX = 300;

/** One line on standard error, whatever the message quotes. */
function quit(message: string): never {
  const line = message.replace(/[\p{Cc}\u2028\u2029]+/gu, " ").trim();
  process.stderr.write(`${line.length > MESSAGE_MAX ? `${line.slice(0, MESSAGE_MAX)}…` : line}\n`);
  process.exit(2);
}

function readOptions(): ProtocolPaths & { readonly json: boolean } {
  try {
    const file = { type: "string" } as const;
    const options = { json: { type: "boolean" }, protocol: file, signature: file, key: file } as const;
    const { values } = parseArgs({ options, strict: true, allowPositionals: false });
    return { ...values, json: values.json ?? false };
  } catch (error) {
    return quit(`${error instanceof Error ? error.message : String(error)}. ${USAGE}`);
  }
}

const showSpoke = (line: SpokeLine): string =>
  `${line.at}  ${line.priority === "none" ? "»" : `[${line.priority}]`} ${line.spoke}`;

const showAnswer = (line: AnswerLine): string =>
  `${line.at}  ${line.outcome}${line.reply === "" ? "" : `: ${line.reply}`}`;

/** Says a case in the terminal: a line is an utterance, an optional leading [m:ss] sets the case clock first. */
async function main(): Promise<void> {
  const { json, ...paths } = readOptions();
  const context = await loadContext(paths);
  if (!context.ok) quit(context.error);
  const byHand = process.stdin.isTTY && !json;
  const startMs = Date.now();
  const talk = new TerminalCase(context.value, createMemoryFactStore(), randomUUID(), startMs);
  const first = await talk.start();

  // A reader that has seen enough (`| head`) is not a failure.
  process.stdout.on("error", () => process.exit(0));
  const print = (text: string): void => void process.stdout.write(`${text}\n`);
  const printSpoke = (lines: readonly SpokeLine[]): void => {
    for (const line of lines) print(json ? JSON.stringify(line) : showSpoke(line));
  };
  // By hand, the case clock follows the real one; a script sets it with [m:ss] and it stands still in between.
  const followRealTime = async (): Promise<void> =>
    printSpoke(await talk.advanceTo(Math.max(talk.caseMs, Date.now() - startMs)));

  const input = createInterface({ input: process.stdin, terminal: false });
  printSpoke(first);
  if (byHand) print("Say something, e.g. blood pressure one ten over sixty. Control-D ends.");
  const timer = byHand ? setInterval(() => void followRealTime(), 1000) : undefined;
  for await (const raw of input) {
    const line = readTalkLine(raw);
    if (!line.ok) quit(line.error);
    if (line.value.atMs !== undefined) {
      if (line.value.atMs < talk.caseMs) quit(`time runs backwards: "${raw.trim()}"`);
      printSpoke(await talk.advanceTo(line.value.atMs));
    } else if (byHand) {
      await followRealTime();
    }
    if (line.value.text === "") continue;
    const { text } = line.value;
    const { answer, spoke } = await talk.hear(
      { by: "typed", candidates: [{ words: text, score: 0 }], endedAtMs: startMs + talk.caseMs },
      text,
    );
    print(json ? JSON.stringify(answer) : showAnswer(answer));
    printSpoke(spoke);
  }
  clearInterval(timer);
}

await main();
