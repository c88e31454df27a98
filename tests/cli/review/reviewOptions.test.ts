import { describe, expect, it } from "vitest";
import { readReviewOptions } from "../../../src/cli/review/reviewOptions.ts";

describe("the command line of the review", () => {
  it("reads a folder and what is to be done with it", () => {
    expect(readReviewOptions(["cases"])).toEqual({
      ok: true,
      value: { kind: "run", folder: "cases", csv: undefined, rehearsals: false, protocol: {} },
    });
    const all = ["--csv", "out.csv", "--rehearsals", "--protocol", "p.json", "--signature", "p.sig", "--key", "k.pem"];
    expect(readReviewOptions([...all, "cases"])).toEqual({
      ok: true,
      value: {
        kind: "run",
        folder: "cases",
        csv: "out.csv",
        rehearsals: true,
        protocol: { protocol: "p.json", signature: "p.sig", key: "k.pem" },
      },
    });
    expect(readReviewOptions(["--help"])).toEqual({ ok: true, value: { kind: "help" } });
  });

  it.each([
    [[], "no folder"],
    [["a", "b"], "one folder at a time"],
    [["--csv"], "--csv"],
    [["--other", "a"], "--other"],
    [["--csv", "case.json", "a"], "could overwrite a record"],
    [["--csv", "CASE.JSON", "a"], "could overwrite a record"],
  ])("refuses %j in one line", (args, part) => {
    const read = readReviewOptions(args);
    expect(read.ok).toBe(false);
    if (read.ok) return;
    expect(read.error).toContain(part);
    expect(read.error).not.toContain("\n");
  });
});
