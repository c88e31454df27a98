import { execFile } from "node:child_process";
import { join, resolve } from "node:path";
import { expect, test } from "vitest";

const ROOT = resolve(import.meta.dirname, "../..");
const clip = (name: string): string => join("tests/listener/vectors", `${name}.wav`);

type Run = { readonly status: number; readonly out: string; readonly err: string };

/** The command as a user runs it, npm's own words aside. */
function hear(...args: string[]): Promise<Run> {
  return new Promise((done) => {
    const command = [join(ROOT, "node_modules/tsx/dist/cli.mjs"), "src/cli/hear.ts", ...args];
    execFile(process.execPath, command, { cwd: ROOT }, (error, out, err) => {
      done({ status: typeof error?.code === "number" ? error.code : 0, out, err });
    });
  });
}

const lines = (out: string): Record<string, unknown>[] =>
  out
    .trim()
    .split("\n")
    .map((line) => JSON.parse(line) as Record<string, unknown>);

// What was said in the clips: tests/listener/vectors/index.json.
test("numbers alone: file, text, value", { timeout: 60_000 }, async () => {
  const { status, out, err } = await hear("--grammar", "numbers", clip("v1"), clip("v2"), clip("v9"));
  expect([status, err]).toEqual([0, ""]);
  const [v1, v2, v9] = lines(out);
  expect(v1).toEqual({ file: clip("v1"), text: "one twenty", value: 120 });
  expect(v2).toEqual({ file: clip("v2"), text: "ninety six", value: 96 });
  expect(v9).toMatchObject({ file: clip("v9"), value: null }); // a sentence, not a number
});

test("one case over three files", { timeout: 60_000 }, async () => {
  const { status, out, err } = await hear("--case", clip("v3"), clip("v9"), clip("v4"));
  expect([status, err]).toEqual([0, ""]);
  const [pressure, talk, rate] = lines(out) as [Answer, Answer, Answer];
  expect(pressure).toMatchObject({ text: "blood pressure one ten over sixty two", outcome: "recorded" });
  expect(vitals(pressure)).toEqual(["sbp 110 mm[Hg]", "dbp 62 mm[Hg]"]);
  expect(talk).toMatchObject({ outcome: "ignored", facts: [] });
  expect(vitals(rate)).toEqual(["hr 105 /min"]);
  const ids = [...pressure.facts, ...rate.facts].map(({ id }) => id);
  expect(new Set(ids).size).toBe(ids.length);
  expect(Object.keys(pressure)).toEqual(["file", "text", "at", "heard", "outcome", "facts", "reply"]);
});

type Fact = {
  readonly id: string;
  readonly type: string;
  readonly code?: string;
  readonly value?: number;
  readonly unit?: string;
};
type Answer = { readonly facts: readonly Fact[] };
const vitals = ({ facts }: Answer): string[] =>
  facts.filter(({ type }) => type === "vital.recorded").map(({ code, value, unit }) => `${code} ${value} ${unit}`);

test.each([
  [["none.wav"], "none.wav: no such file\n"],
  [["package.json"], "package.json: not a WAV or FLAC file\n"],
  [["--grammar", "nope", clip("v1")], /^no grammar "nope"; there are: .*numbers.*\n$/],
  [[], "no audio file given; see npm run hear -- --help\n"],
])("%j ends with status 2 and one line", { timeout: 60_000 }, async (args, message) => {
  const { status, out, err } = await hear(...args);
  expect([status, out]).toEqual([2, ""]);
  if (typeof message === "string") expect(err).toBe(message);
  else expect(err).toMatch(message);
});
