import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";

/*
 * Source of formula and limits: W3C, Web Content Accessibility Guidelines 2.2: success criterion 1.4.6 Contrast
 * (Enhanced), 7:1 for text; 1.4.11 Non-text Contrast, 3:1 for graphics; definitions "relative luminance" and
 * "contrast ratio".
 */
const TEXT_RATIO = 7;
const GRAPHIC_RATIO = 3;

const UI = new URL("../../src/ui/", import.meta.url);
const tokens = new Map(
  [...readFileSync(new URL("tokens.css", UI), "utf8").matchAll(/--([a-z-]+):\s*(#[0-9a-f]{6})\b/g)].map(
    (match) => [match[1]!, match[2]!] as const,
  ),
);

function luminance(hex: string): number {
  const [red, green, blue] = [1, 3, 5].map((at) => {
    const channel = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

function contrast(oneHex: string, otherHex: string): number {
  const [darker, lighter] = [luminance(oneHex), luminance(otherHex)].sort((a, b) => a - b) as [number, number];
  return (lighter + 0.05) / (darker + 0.05);
}

const TEXT_PAIRS = [
  ...["ink", "ink-soft", "good", "warn", "bad"].flatMap((ink) => [`${ink} on ground`, `${ink} on panel`]),
  "ink on field",
  "ink-soft on field",
  "high-ink on high-ground",
  "medium-ink on medium-ground",
  "low-ink on low-ground",
  "ask-ink on ask-ground",
  "drug-other on drug-ink",
  ...["other", "induction", "benzodiazepine", "relaxant", "opioid", "vasopressor", "local", "anticholinergic"].map(
    (drugClass) => `drug-ink on drug-${drugClass}`,
  ),
];

const GRAPHIC_PAIRS = [
  "edge on ground",
  "edge on panel",
  "edge on field",
  "focus on ground",
  "focus on panel",
  "icp on field",
  "remainder on field",
  "missing on field",
  "target on field",
  "good on field",
  "ink on field",
];

const ratioOf = (pair: string) => {
  const [over, under] = pair.split(" on ").map((name) => tokens.get(name));
  if (over === undefined || under === undefined) throw new Error(`no such colour: ${pair}`);
  return contrast(over, under);
};

describe("colours of the page", () => {
  it("the formula gives the ends that the definition names, 21:1 and 1:1", () => {
    expect(contrast("#000000", "#ffffff")).toBeCloseTo(21, 5);
    expect(contrast("#5d6c7a", "#5d6c7a")).toBe(1);
  });

  it.each(TEXT_PAIRS)("text: %s reaches 7:1", (pair) => expect(ratioOf(pair)).toBeGreaterThanOrEqual(TEXT_RATIO));

  it.each(GRAPHIC_PAIRS)("drawing: %s reaches 3:1", (pair) =>
    expect(ratioOf(pair)).toBeGreaterThanOrEqual(GRAPHIC_RATIO),
  );

  it("covers every colour there is", () => {
    const covered = new Set([...TEXT_PAIRS, ...GRAPHIC_PAIRS].flatMap((pair) => pair.split(" on ")));
    expect([...tokens.keys()].filter((name) => !covered.has(name))).toEqual([]);
  });

  it("no style sheet names a colour outside tokens.css", () => {
    const others = readdirSync(UI).filter((name) => name.endsWith(".css") && name !== "tokens.css");
    expect(others.length).toBeGreaterThan(0);
    for (const name of others)
      expect(readFileSync(new URL(name, UI), "utf8"), name).not.toMatch(/#[0-9a-f]{3,8}\b|\b(?:rgb|hsl|oklch)a?\(/i);
  });
});
