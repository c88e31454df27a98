import { writeFileSync } from "node:fs";
import { caseScripts, saidIn, talk, type CaseScript } from "./script.ts";

/** The printed lines that belong to each said line: up to its answer, and what was said right after it. */
function printedBy(script: CaseScript): readonly (readonly string[])[] {
  const said = saidIn(script);
  const printed = talk(said);
  const parts: string[][] = [[]];
  let answeredAt = "";
  for (const [i, json] of talk(said, "--json").entries()) {
    const line = JSON.parse(json) as { readonly at: string; readonly heard?: string };
    const last = parts.at(-1);
    const isAfter = line.heard === undefined && line.at === answeredAt;
    if (isAfter && parts.length > 1) parts.at(-2)?.push(printed[i] ?? "");
    else last?.push(printed[i] ?? "");
    if (line.heard !== undefined) {
      answeredAt = line.at;
      parts.push([]);
    }
  }
  return parts;
}

/**
 * Writes into every case what is answered today. Every line that this changes is then to be read against the protocol: it
 * makes a case agree with the app, not the app with the truth.
 */
for (const script of caseScripts()) {
  const parts = printedBy(script);
  const out: string[] = [];
  let at = 0;
  for (const line of script.lines) {
    if (line.startsWith("> ")) out.push(line, ...(parts[at++] ?? []));
    else if (line === "" || line.startsWith("#")) out.push(line);
  }
  writeFileSync(script.path, `${out.join("\n").trimEnd()}\n`);
}
