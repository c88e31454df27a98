import { describe, expect, it } from "vitest";
import type { Source } from "../../../src/core/derivation.ts";
import { showWhy } from "../../../src/language/sentences/shownWhy.ts";
import { saySource, showSource } from "../../../src/language/sentences/source.ts";
import { explainCpp, explainMap } from "../../../src/log/why/explainPerfusion.ts";
import { defaultProtocol } from "../../../src/protocol/defaultProtocol.ts";
import { played, T0_MS } from "../../app/playedState.ts";

const source = (kind: Source["kind"], reference: string, primaryRead = false): Source => ({
  kind,
  reference,
  primaryRead,
});

describe("a source in few words", () => {
  it.each([
    [source("guideline", "Carney N et al., Neurosurgery 2017;80:6-15"), "guideline, Carney twenty seventeen"],
    [
      source("trial", "Casey JD et al., N Engl J Med 2025, doi:10.1056/NEJMoa2511420"),
      "trial, Casey twenty twenty five",
    ],
    [source("textbook", "Some table of 2007"), "textbook, Some two thousand and seven"],
    [source("label", "label, rocuronium bromide injection"), "drug label"],
    [source("memory", "general teaching, from memory, verify"), "from memory"],
    [source("common-practice", "Anybody 2011, said in passing"), "common practice"],
  ])("%j is %s", (given, said) => expect(saySource(given)).toBe(said));

  it("the screen prints it whole, and whether it was read", () => {
    expect(showSource(source("memory", "old notes"))).toBe(
      "old notes (from memory, not verified; not read at the source)",
    );
    expect(showSource(source("label", "the label", true))).toBe("the label (drug label; read at the source)");
  });
});

describe("the screen shows a derivation whole", () => {
  const state = played(["one ten over sixty"]);
  const lines = (code: "map" | "cpp") => {
    const explain = { map: explainMap, cpp: explainCpp }[code];
    const explanation = explain(state, defaultProtocol, T0_MS + 90_000);
    return explanation === undefined ? [] : showWhy(explanation, T0_MS + 90_000);
  };

  it("a mean: its rule, both pressures with age and kind, the target with its place", () => {
    expect(lines("map").map(({ label, text }) => [label, text])).toEqual([
      ["MAP", "76.67 mmHg, computed: DBP + (SBP − DBP) / 3"],
      ["SBP", "110 mmHg, measured, 2 min ago"],
      ["DBP", "60 mmHg, measured, 2 min ago"],
      ["target", "90 mmHg, from the protocol, targets.populations[3].mapMmHg.target"],
    ]);
  });

  it("a perfusion pressure without a measured ICP: what is assumed, and how the mean came about", () => {
    expect(lines("cpp").map(({ label, text }) => [label, text.replace(/ .*?, /u, " … ")])).toEqual([
      ["CPP", "56.67 … assumed: MAP − ICP"],
      ["MAP", "76.67 … computed"],
      ["ICP", "20 … assumed, assumedIcpMmHg"],
      ["target", "60 … from the protocol, targets.populations[3].cppMmHg.target"],
      ["MAP", "76.67 … computed: DBP + (SBP − DBP) / 3"],
      ["SBP", "110 … measured, 2 min ago"],
      ["DBP", "60 … measured, 2 min ago"],
      ["target", "90 … from the protocol, targets.populations[3].mapMmHg.target"],
    ]);
  });

  it("names a source for the target and for what was assumed", () => {
    const sources = lines("cpp").filter(({ label }) => label === "target" || label === "ICP");
    expect(sources.every(({ sourceText }) => sourceText !== "")).toBe(true);
  });
});
