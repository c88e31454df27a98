import { describe, expect, it } from "vitest";
import { halfDigit, type PublishedRow } from "./row.ts";

/** One test a row. The title counts the rows whose number nobody has read at a source, so that the output shows it. */
export function checkRows<In>(name: string, rows: readonly PublishedRow<In>[], compute: (given: In) => number): void {
  const unread = rows.filter(({ source }) => source.read === "memory").length;
  const count = `${rows.length} rows, ${unread} from memory`;
  describe(`${name} (${count})`, () => {
    it.each(rows)("$given is $expected [$source.read]", ({ given, expected, decimals }) => {
      expect(Math.abs(compute(given) - expected)).toBeLessThanOrEqual(halfDigit(decimals));
    });
  });
}
