import { parseArgs } from "node:util";
import { fail, ok, type Result } from "../core/result.ts";

export type HearOptions =
  | { readonly kind: "help" }
  | {
      readonly kind: "run";
      readonly files: readonly string[];
      readonly oneCase: boolean;
      readonly grammar: string | undefined;
    };

export const HEAR_HELP = `usage: npm run hear -- [--case] [--grammar NAME] FILE...

Listens to WAV or FLAC files with the recogniser of the app, each file one utterance, and prints one JSON object a file:
  file, text                            the file and the recogniser's best words ("" when there are none)
  at, heard, outcome, facts, reply      what became of them in a case, as in npm run talk -- --json

  --case           one case across all files, instead of a fresh case for each; its clock runs with the files
  --grammar NAME   listen with the first public rule of grammars/NAME.jsgf alone, and stop at the words: file, text.
                   For numbers also value: the number, or null when the words are too unsure to be believed or are
                   not one number. text holds the best words even then.
  --help           this text

Exit status 0, or 2 with one line on standard error.
`;

/** Reads the command line. The error is one line for the user. */
export function readHearOptions(args: readonly string[]): Result<HearOptions, string> {
  try {
    const { values, positionals } = parseArgs({
      args: [...args],
      options: { case: { type: "boolean" }, grammar: { type: "string" }, help: { type: "boolean", short: "h" } },
      strict: true,
      allowPositionals: true,
    });
    if (values.help === true) return ok({ kind: "help" });
    if (positionals.length === 0) return fail("no audio file given; see npm run hear -- --help");
    if (values.grammar !== undefined && values.case === true)
      return fail("--grammar hears words alone and has no case: leave --case out");
    return ok({ kind: "run", files: positionals, oneCase: values.case ?? false, grammar: values.grammar });
  } catch (error) {
    return fail(error instanceof Error ? (error.message.split("\n")[0] ?? "") : String(error));
  }
}
