import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { AppState } from "../../../src/app/context.ts";
import type { TalkState } from "../../../src/app/conversation.ts";
import type { ScreenView } from "../../../src/app/screenView.ts";
import { firstSettings } from "../../../src/app/settings.ts";
import { takeTick, takeUtterance } from "../../../src/app/takeTurn.ts";
import { viewScreen } from "../../../src/app/view/screen.ts";
import { readTalkLine } from "../../../src/cli/talkLine.ts";
import { wordsToNumber } from "../../../src/language/numbers/wordsToNumber.ts";
import { emptyCase } from "../../../src/log/caseState.ts";
import { testContext } from "../playCase.ts";
import { talking } from "../saying.ts";

const context = testContext();
const { protocol } = context;
const T0 = 1_800_000_000_000;
const TALK: TalkState = {
  hearing: "listening",
  hearingText: "Listening",
  mode: "open",
  lastHeard: undefined,
  lastSpoken: undefined,
  voiceText: "",
  saveText: "Saved",
  saveFailed: false,
};

const view = (state: AppState, nowMs: number): ScreenView => viewScreen(context, state, TALK, firstSettings, nowMs);

type Shown = { readonly screen: ScreenView; readonly spoken: readonly string[] };

/** Plays lines of the terminal's form and shows the page at their end. */
function shown(...lines: readonly string[]): Shown {
  let state: AppState = { log: emptyCase, lastSaid: undefined };
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
    });
    expect(screen.bar).toBeUndefined();
  });

  // MAP by the one-third rule, worked out by hand: (120 + 2 × 80) / 3 = 93.3; (90 + 2 × 50) / 3 = 63.3.
  it.each([
    ["on target, ICP assumed", ["120/80"], "MAP 93 mmHg, computed", "at or above target 90", true],
    ["under target", ["90/50"], "MAP 63 mmHg, computed", "27 under target 90", false],
    ["measured", ["map 85"], "MAP 85 mmHg, measured", "5 under target 90", false],
    ["on target, but not the CPP", ["120/80", "icp 40"], "MAP 93 mmHg, computed", "at or above target 90", false],
    ["on target, and the CPP too", ["120/80", "icp 22"], "MAP 93 mmHg, computed", "at or above target 90", true],
  ] as const)("%s", (_name, lines, mapText, deficitText, met) => {
    expect(shown(...lines).screen.headline).toMatchObject({ mapText, deficitText, met });
  });

  it("draws the assumed range while ICP is not measured, and the target MAP as the line", () => {
    const { low, high } = protocol.assumedIcpMmHg.value;
    const { bar } = shown("map 85").screen;
    expect(bar).toMatchObject({
      mapMmHg: 85,
      icp: { kind: "assumed", lowMmHg: low, highMmHg: high },
      targetMmHg: protocol.targets.mapMmHg.value,
    });
    expect(bar?.scaleMaxMmHg).toBeGreaterThan(protocol.targets.mapMmHg.value);
  });

  it("draws a measured ICP, and the MAP that the CPP target then needs", () => {
    expect(shown("map 95", "icp 40").screen.bar).toMatchObject({
      mapMmHg: 95,
      icp: { kind: "measured", lowMmHg: 40, highMmHg: 40 },
      targetMmHg: 40 + protocol.targets.cppMmHg.value,
    });
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

  it("takes an alert off once it is cleared", () => {
    expect(shown("map 65", "correction map 95").screen.alerts).toEqual([]);
  });
});
