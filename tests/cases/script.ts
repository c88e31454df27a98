import { execFileSync } from "node:child_process";
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";

const ROOT = join(import.meta.dirname, "../..");
const SAID = "> ";

/** A written case: what is said, and what must be answered and said unasked, line by line as the terminal prints it. */
export type CaseScript = { readonly path: string; readonly lines: readonly string[] };

export const caseScripts = (): readonly CaseScript[] =>
  readdirSync(import.meta.dirname)
    .filter((name) => name.endsWith(".txt"))
    .sort()
    .map((name) => {
      const path = join(import.meta.dirname, name);
      return { path, lines: readFileSync(path, "utf8").split("\n") };
    });

export const saidIn = ({ lines }: CaseScript): readonly string[] =>
  lines.flatMap((line) => (line.startsWith(SAID) ? [line.slice(SAID.length)] : []));

export const expectedIn = ({ lines }: CaseScript): readonly string[] =>
  lines.filter((line) => line !== "" && !line.startsWith("#") && !line.startsWith(SAID));

/** Says the lines to `npm run talk` and returns what it prints. */
export function talk(lines: readonly string[], ...options: readonly string[]): readonly string[] {
  const printed = execFileSync("npm", ["run", "--silent", "talk", "--", ...options], {
    cwd: ROOT,
    encoding: "utf8",
    input: `${lines.join("\n")}\n`,
  });
  return printed.trimEnd().split("\n");
}
