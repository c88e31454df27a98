import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { writeWav } from "../../browser/wav.ts";
import { RATE_HZ } from "../lab.ts";

const PROGRAM = "pocketsphinx_batch";
/** Numbers of two and three digits, as the sentences say them. */
const GRAMMAR = `#JSGF V1.0;
grammar judged;
<one> = one | two | three | four | five | six | seven | eight | nine;
<teen> = ten | eleven | twelve | thirteen | fourteen | fifteen | sixteen | seventeen | eighteen | nineteen;
<ty> = twenty | thirty | forty | fifty | sixty | seventy | eighty | ninety;
<rest> = <teen> | <ty> [<one>];
public <number> = <rest> | one hundred | one oh <one> | one <rest>;
`;

/** Whether that recogniser is on this machine. It is no part of the project: a package of the system, with its US model. */
export function secondJudgeIsHere(): boolean {
  try {
    execFileSync("sh", ["-c", `command -v ${PROGRAM}`], { stdio: "ignore" });
    return true;
  } catch {
    return false;
  }
}

/** Words heard in each sound by a recogniser that has nothing of ours in it; "" where it heard none. */
export function hearBySecondJudge(sounds: readonly Float32Array[]): readonly string[] {
  const folder = mkdtempSync(join(tmpdir(), "bench-judge-"));
  const at = (name: string): string => join(folder, name);
  try {
    const names = sounds.map((_sound, i) => `n${i}`);
    sounds.forEach((pcm, i) => writeWav(at(`${names[i]!}.wav`), pcm, RATE_HZ));
    writeFileSync(at("list"), `${names.join("\n")}\n`);
    writeFileSync(at("numbers.gram"), GRAMMAR);
    const files = ["-ctl", at("list"), "-cepdir", folder, "-cepext", ".wav", "-hyp", at("heard")];
    execFileSync(PROGRAM, ["-adcin", "yes", "-adchdr", "44", "-jsgf", at("numbers.gram"), ...files], {
      stdio: "ignore",
    });
    const heard = new Map(
      readFileSync(at("heard"), "utf8")
        .split("\n")
        .map((line) => /^(.*?) ?\((n\d+) -?\d+\)$/u.exec(line.trim()))
        .flatMap((found) => (found ? [[found[2]!, found[1]!] as const] : [])),
    );
    return names.map((name) => heard.get(name) ?? "");
  } finally {
    rmSync(folder, { recursive: true });
  }
}
