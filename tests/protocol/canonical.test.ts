import { createHash } from "node:crypto";
import canonicalize from "canonicalize";
import fc from "fast-check";
import { expect, it } from "vitest";
import { canonicalForm } from "../../src/protocol/canonical.ts";
import { defaultProtocol } from "../../src/protocol/defaultProtocol.ts";
import type { Protocol } from "../../src/protocol/protocol.ts";

/** Rules of RFC 8785 worked by hand: keys by UTF-16 code unit, numbers as ECMAScript prints them, no space. */
const ROWS: readonly [unknown, string][] = [
  [{ b: 1, a: [true, null, "x"] }, '{"a":[true,null,"x"],"b":1}'],
  [[333333333.33333329, 1e30, 4.5, 2e-3, 1e-27], "[333333333.3333333,1e+30,4.5,0.002,1e-27]"],
  [
    { "\u20ac": 1, "\r": 2, "1": 3, "\u00f6": 4, "\ud83d\ude00": 5, "\ufb33": 6 },
    '{"\\r":2,"1":3,"ö":4,"€":1,"😀":5,"\ufb33":6}',
  ],
  ['€$\u000f\nA\'B"\\\\"/', '"€$\\u000f\\nA\'B\\"\\\\\\\\\\"/"'],
  [-0, "0"],
];
it.each(ROWS)("%j", (value, text) => expect(canonicalize(value)).toBe(text));

/** A second implementation, for plain JSON: keys sorted, the rest left to JSON.stringify. */
const sorted = (value: unknown): unknown => {
  if (Array.isArray(value)) return value.map(sorted);
  if (typeof value !== "object" || value === null) return value;
  const entries = Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1));
  return Object.fromEntries(entries.map(([key, item]) => [key, sorted(item)]));
};

it("is what a second implementation gives for the whole built-in protocol", () => {
  expect(canonicalForm(defaultProtocol)).toBe(JSON.stringify(sorted(defaultProtocol)));
});

/** The same content with the keys of every group in an order of chance. */
function shuffled(value: unknown, next: () => number): unknown {
  if (Array.isArray(value)) return value.map((item) => shuffled(item, next));
  if (typeof value !== "object" || value === null) return value;
  const keyed = Object.entries(value).map((entry) => [next(), entry] as const);
  const entries = keyed.sort(([a], [b]) => a - b).map(([, [key, item]]) => [key, shuffled(item, next)] as const);
  return Object.fromEntries(entries);
}

it("does not depend on the order of keys nor on spacing, and does depend on every value", () => {
  const hash = (p: Protocol) => createHash("sha256").update(canonicalForm(p)).digest("hex");
  fc.assert(
    fc.property(fc.infiniteStream(fc.nat()), fc.integer({ min: 0, max: 8 }), (chance, indent) => {
      const mixed = shuffled(defaultProtocol, () => chance.next().value);
      const again = JSON.parse(JSON.stringify(mixed, null, indent)) as Protocol;
      expect(hash(again)).toBe(hash(defaultProtocol));
    }),
    { numRuns: 20 },
  );
  expect(hash({ ...defaultProtocol, version: `${defaultProtocol.version}x` })).not.toBe(hash(defaultProtocol));
});
