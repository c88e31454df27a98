import { spawn } from "node:child_process";
import { fileURLToPath } from "node:url";

const ROOT = fileURLToPath(new URL("../../", import.meta.url));

export type TalkRun = { readonly status: number | null; readonly stdout: string; readonly stderr: string };

/** Runs the terminal as a user's shell would, with this on its standard input. */
export function runTalk(input: string | Uint8Array, ...args: readonly string[]): Promise<TalkRun> {
  return new Promise((resolve, reject) => {
    const child = spawn("node_modules/.bin/tsx", ["src/cli/talk.ts", ...args], { cwd: ROOT });
    let stdout = "";
    let stderr = "";
    child.stdout.setEncoding("utf8").on("data", (text: string) => (stdout += text));
    child.stderr.setEncoding("utf8").on("data", (text: string) => (stderr += text));
    // The program may end before it has read everything; that is for the test to judge by its status.
    child.stdin.on("error", () => undefined);
    child.on("error", reject);
    child.on("close", (status) => resolve({ status, stdout, stderr }));
    child.stdin.end(input);
  });
}

/** The lines of standard output as JSON; one that is not JSON fails the test. */
export const linesOf = (run: TalkRun): readonly Record<string, unknown>[] =>
  run.stdout
    .split("\n")
    .slice(0, -1)
    .map((line) => JSON.parse(line) as Record<string, unknown>);
