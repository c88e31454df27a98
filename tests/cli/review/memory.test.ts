import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { queryObjects, setFlagsFromString } from "node:v8";
import { runInNewContext } from "node:vm";
import { afterAll, expect, it } from "vitest";
import { ok } from "../../../src/core/result.ts";
import { caseOf, review, write } from "./reviewStub.ts";

/** How many objects live, after everything that can be collected was, and how much memory is held. */
type Held = { readonly objects: number; readonly bytes: number };

function held(): Held {
  setFlagsFromString("--expose-gc");
  (runInNewContext("gc") as () => void)();
  const { heapUsed, arrayBuffers } = process.memoryUsage();
  return { objects: queryObjects(Object, { format: "count" }), bytes: heapUsed + arrayBuffers };
}

const folder = mkdtempSync(join(tmpdir(), "tragus-memory-"));
afterAll(() => rmSync(folder, { recursive: true }));

/** By then all code has run often enough that nothing more of its own is kept. */
const FIRST = 200;
const LAST = 1200;

// An id and a label as long as nobody gives them: whoever keeps a string of the record is found out.
const longText = (i: number): string => `${i} `.padEnd(5000, `${i}.`);

it("reviews one case after the other and keeps no object of any", async () => {
  for (let i = 0; i < LAST; i++) write(folder, `${String(i).padStart(4, "0")}.json`, String(i));
  const seen: Held[] = [];
  let done = 0;
  const { lines } = await review(folder, {
    readRecord: async (i) => ok({ ...caseOf(longText(Number(i))), label: longText(Number(i)) }),
    print: async () => undefined,
    csv: async () => undefined,
    progressOf: () => ({
      step: () => {
        done += 1;
        if (done === FIRST || done === LAST) seen.push(held());
      },
      clear: () => undefined,
    }),
  });
  expect([done, lines]).toEqual([LAST, [""]]);
  const [first, last] = seen as [Held, Held];
  // A case that is kept as it was measured is 49 objects and 5 kB; its numbers alone are a chunk in many cases.
  expect((last.objects - first.objects) / (LAST - FIRST)).toBeLessThan(0.1);
  expect((last.bytes - first.bytes) / (LAST - FIRST)).toBeLessThan(500);
});
