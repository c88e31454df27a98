import { describe, expect, it } from "vitest";
import { viewDrugs } from "../../../src/app/view/drugs.ts";
import { defaultProtocol } from "../../../src/protocol/defaultProtocol.ts";
import { playedThrough, T0_MS } from "../playedState.ts";

/** Worked by hand: 250 mL at 30 mL/h for 20 minutes leave 240 mL, 8 h; 110 mg by ideal weight. */
const LINES = [
  "weight eight zero kilos",
  "height one seventy eight centimetres, sex male",
  "noradrenaline four milligrams in two fifty",
  "affirm",
  "start noradrenaline at point one",
  "affirm",
  "ketamine given",
  "affirm",
  "rocuronium ten milligrams per mil",
  "affirm",
  "adrenaline ten micrograms given",
  "affirm",
  "saline two fifty given",
  "affirm",
];

const view = (lines: readonly string[], afterMs = 0) =>
  viewDrugs(playedThrough(lines), defaultProtocol, T0_MS + afterMs);

describe("the drugs on the screen", () => {
  it("are what was affirmed, the last mentioned first, each with its class", () => {
    const { drugs, fluids } = view(LINES, 20 * 60_000);
    expect(drugs.map(({ name, classText, reversed, lines }) => [name, classText, reversed, lines])).toEqual([
      ["adrenaline", "vasopressor", true, ["Given 10 micrograms, 1 dose"]],
      ["rocuronium", "muscle relaxant", false, ["Concentration 10 mg in 1 mL, affirmed"]],
      ["ketamine", "induction", false, ["Given 110 mg, 1 dose"]],
      [
        "noradrenaline",
        "vasopressor",
        false,
        ["Runs at 0.1 micrograms/kg/min, 30 mL/h", "Bag empty in 8 h 0 min", "Concentration 4 mg in 250 mL, affirmed"],
      ],
    ]);
    expect(fluids).toEqual(["isotonic crystalloid 250 mL, 3.13 mL/kg"]);
  });

  it("are none while a dose is only asked about", () => {
    const asked = ["height one seventy eight centimetres, sex male", "ketamine given"];
    expect(view(asked)).toEqual({ drugs: [], fluids: [] });
    expect(view([...asked, "affirm", "disregard"])).toEqual({ drugs: [], fluids: [] });
  });

  it("an infusion that was stopped is said to be one", () => {
    const { drugs } = view([...LINES.slice(0, 6), "stop noradrenaline", "affirm"]);
    expect(drugs[0]?.lines[0]).toBe("Infusion stopped");
  });
});
