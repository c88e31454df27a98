import { parseArgs } from "node:util";
import { fail, ok, type Result } from "../../core/result.ts";
import type { ProtocolPaths } from "../loadContext.ts";

export type ReviewOptions =
  | { readonly kind: "help" }
  | {
      readonly kind: "run";
      readonly folder: string;
      readonly csv: string | undefined;
      readonly rehearsals: boolean;
      readonly protocol: ProtocolPaths;
    };

export const REVIEW_HELP = `usage: npm run review -- [--csv FILE] [--rehearsals] [--protocol FILE [--signature FILE --key FILE]] FOLDER

Reads every exported record (*.json) of a folder and of the folders in it, works out the quality measures of each case, and
prints a row a case and then the figures of the service. Links are not followed, hidden files are left alone. A file that is
broken, larger than 16 MiB or was altered is named with the reason and skipped.

  --csv FILE        also writes every measure of every case as CSV (RFC 4180, UTF-8), units in the headers
  --rehearsals      counts rehearsals in the figures of the service; without it they are listed and marked only
  --protocol FILE   judges all cases by the floors and bands of this protocol; without it by the example that comes with
                    Tragus. A record names its own protocol but does not hold it; a case that was recorded under another is
                    marked
  --help            this text

Exit status 0, also when files were skipped; 2 with one line on standard error when it cannot begin.
`;

/** Reads the command line. The error is one line for the user. */
export function readReviewOptions(args: readonly string[]): Result<ReviewOptions, string> {
  const file = { type: "string" } as const;
  const flag = { type: "boolean" } as const;
  try {
    const { values, positionals } = parseArgs({
      args: [...args],
      options: {
        csv: file,
        rehearsals: flag,
        protocol: file,
        signature: file,
        key: file,
        help: { ...flag, short: "h" },
      },
      strict: true,
      allowPositionals: true,
    });
    const { help, csv, rehearsals = false, ...protocol } = values;
    const [folder, ...more] = positionals;
    if (help === true) return ok({ kind: "help" });
    if (folder === undefined) return fail("no folder given; see npm run review -- --help");
    if (more.length > 0) return fail(`one folder at a time: ${positionals.join(", ")}`);
    if (csv?.toLowerCase().endsWith(".json") === true)
      return fail(`--csv ${csv} could overwrite a record: name it .csv`);
    return ok({ kind: "run", folder, csv, rehearsals, protocol });
  } catch (error) {
    return fail(error instanceof Error ? (error.message.split("\n")[0] ?? "") : String(error));
  }
}
