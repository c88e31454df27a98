import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { freshState, type AppState } from "../../../src/app/context.ts";
import { FIRST_TALK, type TalkState } from "../../../src/app/talkState.ts";
import type { ScreenView } from "../../../src/app/screenView.ts";
import { firstSettings } from "../../../src/app/settings.ts";
import { takeTick, takeUtterance } from "../../../src/app/takeTurn.ts";
import { viewScreen } from "../../../src/app/view/screen.ts";
import { readTalkLine } from "../../../src/cli/talkLine.ts";
import { wordsToNumber } from "../../../src/language/numbers/wordsToNumber.ts";
import { emptyCase } from "../../../src/log/caseState.ts";
import { selectTargets } from "../../../src/log/targets.ts";
import { testContext } from "../playCase.ts";
import { talking } from "../saying.ts";

const context = testContext();
const { protocol } = context;
const { mapMmHg, cppMmHg } = selectTargets(emptyCase, protocol);
const MAP_TARGET = mapMmHg.target.value;
const CPP_TARGET = cppMmHg.target.value;
const T0 = 1_800_000_000_000;
const TALK: TalkState = { ...FIRST_TALK, hearing: "listening", hearingText: "Listening", saveText: "Saved" };

const view = (state: AppState, nowMs: number): ScreenView => viewScreen(context, state, TALK, firstSettings, nowMs);

type Shown = { readonly screen: ScreenView; readonly spoken: readonly string[] };

/** Plays lines of the terminal's form and shows the page at their end. */
function shown(...lines: readonly string[]): Shown {
  let state: AppState = freshState(emptyCase);
  let nowMs = T0;
  const spoken: string[] = [];
  for (const raw of lines) {
    const line = readTalkLine(raw);
    if (!line.ok) throw new Error(line.error);
    nowMs = line.value.atMs === undefined ? nowMs : T0 + line.value.atMs;
    const words = line.value.text;
    const turn =
      words === ""
        ? takeTick(context, state, nowMs)
        : takeUtterance(context, state, { by: "typed", candidates: [{ words, score: 0 }], endedAtMs: nowMs }, nowMs);
    spoken.push(...turn.announcements.map((a) => a.text));
    state = turn.state;
  }
  return { screen: view(state, nowMs), spoken };
}

const tile = (screen: ScreenView, id: string) => screen.tiles.find((t) => t.id === id);

describe("headline and bar", () => {
  it("says that nothing is known at first, and draws nothing", () => {
    const { screen } = shown("status");
    expect(screen.headline).toEqual({
      mapText: "MAP not yet recorded",
      deficitText: "",
      cppText: "CPP not known: no pressure recorded",
      met: false,
      mapUnder: false,
      cppUnder: false,
    });
    expect(screen.bar).toBeUndefined();
  });

  // MAP by the one-third rule, worked out by hand: (120 + 2 × 80) / 3 = 93.3; (90 + 2 × 50) / 3 = 63.3.
  it.each([
    ["on target, ICP assumed", ["120/80"], "MAP 93 mmHg, computed", "at or above target 90", true],
    ["under target", ["90/50"], "MAP 63 mmHg, computed", "27 under target 90", false],
    ["measured", ["map 85"], "MAP 85 mmHg, measured", "5 under target 90", false],
    ["on target, but not the CPP", ["120/80", "icp 40"], "MAP 93 mmHg, computed", "at or above target 90", false],
    [
      "measured, and not what its pressure gives",
      ["140/70 map 80"],
      "MAP 80 mmHg, measured",
      "10 under target 90; systolic and diastolic give 93 mmHg",
      false,
    ],
    ["a child's target", ["age 6", "map 62"], "MAP 62 mmHg, measured", "3 under target 65", false],
    ["a child on target", ["map 66", "age 6"], "MAP 66 mmHg, measured", "at or above target 65", true],
    ["a child not at its CPP", ["age 6", "map 66", "icp 22"], "MAP 66 mmHg, measured", "at or above target 65", false],
    ["on target, and the CPP too", ["120/80", "icp 22"], "MAP 93 mmHg, computed", "at or above target 90", true],
  ] as const)("%s", (_name, lines, mapText, deficitText, met) => {
    expect(shown(...lines).screen.headline).toMatchObject({ mapText, deficitText, met });
  });

  // CPP by hand: 93.3 - 40 = 53.3; 93.3 - 22 = 71.3; 63.3 - 22 = 41.3.
  it.each([
    [["120/80"], { met: true, mapUnder: false, cppUnder: false }],
    [["120/80", "icp 22"], { met: true, mapUnder: false, cppUnder: false }],
    [["120/80", "icp 40"], { met: false, mapUnder: false, cppUnder: true }],
    [["90/50"], { met: false, mapUnder: true, cppUnder: false }],
    [["90/50", "icp 22"], { met: false, mapUnder: true, cppUnder: true }],
  ] as const)("marks what is under target, each by itself: %j", (lines, marks) => {
    expect(shown(...lines).screen.headline).toMatchObject(marks);
  });

  it("draws the assumed range while ICP is not measured, and the target MAP as the line", () => {
    const { low, high } = protocol.assumedIcpMmHg.value;
    const { bar } = shown("map 85").screen;
    expect(bar).toMatchObject({
      mapMmHg: 85,
      icp: { kind: "assumed", lowMmHg: low, highMmHg: high },
      targetMmHg: MAP_TARGET,
    });
    expect(bar?.scaleMaxMmHg).toBeGreaterThan(MAP_TARGET);
  });

  it.each([
    ["a line levelled at the tragus", "art line one ten over sixty at the tragus", ""],
    ["a line, level not said", "art line one ten over sixty", "; mean at the level of the heart"],
    ["a cuff", "cuff one ten over sixty", "; mean at the level of the cuff"],
  ])("a measured CPP keeps where its mean was levelled: %s", (_, said, level) => {
    const { cppText } = shown(said, "icp 22").screen.headline;
    const less = level === "" ? "" : ", less at the brain with the head up";
    expect(cppText).toBe(`CPP 55 mmHg, 5 under target 60${level}${less}`);
  });

  it("explains on the page what was explained aloud, and nothing before", () => {
    expect(shown("120/80").screen.why).toBeUndefined();
    const { screen } = shown("120/80", "why");
    expect(screen.why?.text).toBe(
      "MAP ninety three from systolic one twenty and diastolic eighty. Target ninety, common practice. One-third rule, from memory.",
    );
    expect(screen.why?.lines.map(({ label }) => label)).toEqual(["MAP", "SBP", "DBP", "target"]);
  });

  it("draws a measured ICP, and the MAP that the CPP target then needs", () => {
    expect(shown("map 95", "icp 40").screen.bar).toMatchObject({
      mapMmHg: 95,
      icp: { kind: "measured", lowMmHg: 40, highMmHg: 40 },
      targetMmHg: 40 + CPP_TARGET,
    });
  });

  it("draws the line of a child where its mean or its CPP needs it", () => {
    expect(shown("age 6", "map 70").screen.bar?.targetMmHg).toBe(65);
    expect(shown("age 6", "map 70", "icp 22").screen.bar?.targetMmHg).toBe(67);
  });

  it("says in the bar's sentence too that a mean and its pressure do not agree", () => {
    expect(shown("140/70 map 80").screen.bar?.description).toContain("systolic and diastolic give 93 mmHg");
    expect(shown("140/70 map 92").screen.bar?.description).not.toContain("give");
  });

  it("never states a CPP without an ICP: bounds only, and named as assumed", () => {
    fc.assert(
      fc.property(talking, (talk) => {
        const { screen } = shown(...talk.map(({ words }) => words.replace(/^\s*\[/, "")));
        const hasIcp = tile(screen, "icp")?.origin === "measured";
        const stated = [screen.headline.cppText, screen.bar?.description ?? "", ...screen.alerts.map((a) => a.text)];
        if (hasIcp) return;
        for (const text of stated) {
          expect(text).not.toMatch(/CPP -?\d/);
          if (/CPP is/.test(text)) expect(text).toMatch(/If ICP is \d+ to \d+ \(assumed\)/);
        }
        expect(screen.bar?.icp.kind ?? "assumed").toBe("assumed");
      }),
      { numRuns: 150 },
    );
  });
});

describe("targets in force", () => {
  const ADULT = "SBP 110, MAP 90, CPP 60 mmHg.";
  const USUAL = "SpO2 94 %, EtCO2 35 to 45 mmHg.";
  it.each<readonly [name: string, lines: readonly string[], targets: readonly string[]]>([
    ["nothing known", [], ["Adult targets until an age is recorded, cause unknown.", ADULT, USUAL]],
    ["an adult", ["age 40"], ["Targets: 15 to 49 years, cause unknown.", ADULT, USUAL]],
    ["a child", ["age 6"], ["Targets: 1 to 10 years, cause unknown.", "SBP 102, MAP 65, CPP 45 mmHg.", USUAL]],
    ["an injury", ["cause head injury"], ["Adult targets until an age is recorded, cause head injury.", ADULT, USUAL]],
    [
      "a bleed",
      ["age 60", "cause bleed"],
      ["Targets: 50 to 69 years, cause bleed.", "SBP 130, MAP 90, CPP 60 mmHg.", USUAL, "SBP ceiling 150 mmHg."],
    ],
    [
      "a bleed that herniates",
      ["age 60", "cause bleed", "herniation suspected"],
      [
        "Targets: 50 to 69 years, cause bleed.",
        "SBP 130, MAP 90, CPP 60 mmHg.",
        "SpO2 94 %, EtCO2 30 to 35 mmHg.",
        "SBP ceiling 150 suspended: herniation.",
        "Herniation suspected.",
      ],
    ],
    [
      "herniation over",
      ["herniation suspected", "no herniation"],
      ["Adult targets until an age is recorded, cause unknown.", ADULT, USUAL, "No herniation."],
    ],
    ["an age struck", ["age 6", "disregard"], ["Adult targets until an age is recorded, cause unknown.", ADULT, USUAL]],
  ])("%s", (_name, lines, targets) => {
    expect(shown("status", ...lines).screen.targetLines).toEqual(targets);
  });
});

describe("tiles", () => {
  it("shows what is missing as missing", () => {
    const { tiles } = shown("status").screen;
    expect(tiles.map((t) => t.id)).toEqual([
      "pressure",
      "hr",
      "spo2",
      "etco2",
      "icp",
      "gcs",
      "pupilLeft",
      "pupilRight",
    ]);
    expect(new Set(tiles.map((t) => `${t.text} ${t.origin} ${t.ageText}`))).toEqual(
      new Set(["not yet recorded none "]),
    );
  });

  it.each([
    [["120/80"], "pressure", "120/80 mmHg", "now"],
    [["cuff 120/80"], "pressure", "120/80 mmHg cuff", "now"],
    [["120 over palp"], "pressure", "120 mmHg systolic palpated", "now"],
    [["120/80", "[0:40] systolic one oh two"], "pressure", "102 mmHg systolic", "now"],
    [["heart rate 90", "[2:00]"], "hr", "90 /min", "2 min ago"],
    [["etco2 4.5 kPa"], "etco2", "34 mmHg", "now"],
    [["icp 20 cmH2O"], "icp", "15 mmHg", "now"],
    [["icp 22 at the tragus"], "icp", "22 mmHg at tragus", "now"],
    [["temp 37"], "temp", "37.0 °C", "now"],
    [["weight 176 pounds"], "weight", "79.8 kg", "now"],
    [["age 6"], "age", "6 years", "now"],
    [["six months old"], "age", "6 months", "now"],
    [["age one month"], "age", "1 month", "now"],
    [["age zero months"], "age", "0 months", "now"],
    [["age one year"], "age", "1 year", "now"],
    [["age six months", "correction age two"], "age", "2 years", "now"],
    [["glucose 5.5"], "glucose", "5.5 mmol/L", "now"],
    [["gcs e4vtm6"], "gcs", "E4 VNT M6", "now"],
    [["eyes 4", "[3:00] motor 5"], "gcs", "E4 V– M5", "3 min ago"],
    [["left pupil 4 brisk"], "pupilLeft", "4 mm brisk", "now"],
    [["left pupil 4 brisk", "[5:00] left pupil fixed"], "pupilLeft", "fixed", "now"],
    [["left pupil fixed", "[5:00] left pupil 4 brisk"], "pupilLeft", "4 mm brisk", "now"],
    [["heart rate 90", "correction 85"], "hr", "85 /min", "now"],
    [["heart rate 90", "[1:00] heart rate 80", "disregard"], "hr", "90 /min", "1 min ago"],
  ] as const)("%j: %s is %s, %s", (lines, id, text, ageText) => {
    expect(tile(shown(...lines).screen, id)).toMatchObject({ text, ageText, origin: "measured" });
  });

  it("calls a value stale only after the time of the protocol", () => {
    const s = protocol.timers.staleAfterS.value;
    const at = (seconds: number) => `[${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, "0")}]`;
    expect(tile(shown("heart rate 90", at(s)).screen, "hr")?.stale).toBe(false);
    expect(tile(shown("heart rate 90", at(s + 1)).screen, "hr")?.stale).toBe(true);
  });
});

describe("questions, steps and alerts", () => {
  it("shows the question that waits, and other phrases while it does", () => {
    const { screen } = shown("icp fifteen");
    expect(screen.question).toBe("ICP fifteen, one five?");
    expect(tile(screen, "icp")?.text).toBe("not yet recorded");
    expect(screen.phrases).not.toEqual(shown("icp one five").screen.phrases);
    expect(shown("icp fifteen", "one five").screen.question).toBeUndefined();
  });

  it("shows the next step and how many are done", () => {
    const { screen } = shown("bleeding stopped", "suction ready");
    expect(screen.nextStep?.challenge).toBe("Mean pressure at target?");
    expect(screen.progressText).toMatch(/^2 of \d+ steps done$/);
    expect(screen.groups.map((g) => g.done).reduce((a, b) => a + b, 0)).toBe(2);
  });

  it.each([[["90/50"]], [["map 85"]], [["sats 85"]], [["120/80", "icp 40"]], [["map 65", "[1:00]"]]])(
    "%j: each alert that is spoken stands on the screen with the same number",
    (lines) => {
      const { screen, spoken } = shown(...lines);
      expect(spoken.length).toBeGreaterThan(0);
      for (const text of spoken) {
        const [first = ""] = text.toLowerCase().split(",");
        const [name = "", ...words] = first.replace(/^measured /, "").split(" ");
        const number = wordsToNumber(words);
        const label = { systolic: "SBP", sats: "SpO2" }[name] ?? name.toUpperCase();
        expect(number.ok).toBe(true);
        expect(screen.alerts.map((a) => a.text.split(",")[0])).toContain(`${label} ${number.ok ? number.value : ""}`);
      }
    },
  );

  it("takes an alert off that a child's age leaves without a ground", () => {
    expect(shown("systolic 95").screen.alerts).not.toEqual([]);
    expect(shown("systolic 95", "age 2").screen.alerts).toEqual([]);
  });

  it("takes an alert off once it is cleared", () => {
    expect(shown("map 65", "correction map 95").screen.alerts).toEqual([]);
  });

  it("an alert whose value is back at target says that it waits to be sure", () => {
    expect(shown("map 65").screen.alerts.map((a) => a.text)).toEqual([
      "CPP under 60 if ICP is over 5, now",
      "MAP 65, 25 under target 90, now",
    ]);
    const back = shown("map 65", "map 95").screen.alerts.map((a) => a.text);
    expect(back).toEqual([
      "CPP under 60 if ICP is over 35, not yet sure, now",
      "MAP 95, back at target 90, not yet sure, now",
    ]);
  });
});
