import { describe, expect, it } from "vitest";
import { createRandom } from "../random.ts";
import { createGrammarWalk } from "./walkGrammar.ts";

const SOURCES = {
  small: `#JSGF V1.0;
grammar small;
public <all> = <short> | <many>;
<short> = stop;
<many> = (one | two | three | four) (five | six | seven | eight);
<optional> = come [here];
<again> = now (now)*;
<twice> = (fifteen | fifty | one hundred) {twoWaysWhole} ((one | two) (zero | five)) {twoWaysDigits};
`,
};
const walk = createGrammarWalk(SOURCES, "small");

function said(rule: string, times: number): ReadonlyMap<string, number> {
  const random = createRandom(1);
  const counts = new Map<string, number>();
  for (let i = 0; i < times; i++) {
    const words = walk.words("small", rule, random);
    counts.set(words, (counts.get(words) ?? 0) + 1);
  }
  return counts;
}

describe("random paths", () => {
  it("goes each way, and those with more paths oftener, but not in proportion", () => {
    const counts = said("all", 2_000);
    expect(counts.size).toBe(17);
    // Sixteen paths against one: four to one.
    expect(counts.get("stop")! / 2_000).toBeCloseTo(0.2, 1);
  });
  it.each([
    ["optional", ["come", "come here"]],
    ["again", ["now", "now now", "now now now"]],
    ["twice", ["fifteen one five", "fifty five zero", "one hundred one zero zero"]],
  ] as const)("%s", (rule, expected) => {
    expect([...said(rule, 400).keys()]).toEqual(expect.arrayContaining([...expected]));
  });
  it("says the same number in both of two ways", () => {
    const ways = [...said("twice", 400).keys()];
    expect(
      ways.every((words) =>
        /^(fifteen one five|fifty five (zero|oh)|one hundred one (zero|oh) (zero|oh))$/.test(words),
      ),
    ).toBe(true);
  });
  it("is the same for the same chance, and names a rule that is not there", () => {
    expect([...said("all", 20).keys()]).toEqual([...said("all", 20).keys()]);
    expect(() => walk.words("small", "none", createRandom(1))).toThrow("small.jsgf has no rule <none>");
  });
});
