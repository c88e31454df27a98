import { expect, test } from "vitest";
import { fail, ok } from "../../src/core/result.ts";
import { readHearOptions } from "../../src/cli/hearOptions.ts";

const run = { kind: "run", oneCase: false, grammar: undefined };

test.each([
  [["a.wav"], ok({ ...run, files: ["a.wav"] })],
  [["a.wav", "b.flac", "--case"], ok({ ...run, files: ["a.wav", "b.flac"], oneCase: true })],
  [["--grammar", "numbers", "a.wav"], ok({ ...run, files: ["a.wav"], grammar: "numbers" })],
  [["--help"], ok({ kind: "help" })],
  [[], fail("no audio file given; see npm run hear -- --help")],
  [["--case", "--grammar", "numbers", "a.wav"], fail("--grammar hears words alone and has no case: leave --case out")],
])("%j", (args, result) => {
  expect(readHearOptions(args)).toEqual(result);
});

test("an unknown option is one line", () => {
  const result = readHearOptions(["--loud", "a.wav"]);
  expect(result.ok).toBe(false);
  if (!result.ok) expect(result.error).toMatch(/^[^\n]*--loud[^\n]*$/);
});
