import { describe, expect, it } from "vitest";
import { interpret } from "../../src/app/interpret.ts";
import type { GrammarState, Utterance } from "../../src/app/ports.ts";
import type { Intent } from "../../src/language/intent.ts";
import { leastM1, leastM2 } from "../listener/certainSound.ts";
import { testContext } from "./playCase.ts";

const { grammars } = testContext();
// A power of two and a best score of zero: the margins come out exactly as they were put in.
const PHONES = 16;
const A_LITTLE = 0.01;
const [takeFit, askFit] = [leastM1("take", "value", PHONES), leastM1("ask", "value", PHONES)];
const takeDistance = leastM2("take", "value", PHONES);
/** Near enough to be offered, and too near for taking. */
const NEAR = takeDistance / 2;

/** Sound with a given cost per phone against the free path, and rivals at given distances from the best words. */
function sound(best: string, costPerPhone: number, ...rivals: readonly (readonly [string, number])[]): Utterance {
  const top = 0;
  return {
    by: "listener",
    candidates: [{ words: best, score: top }, ...rivals.map(([words, distance]) => ({ words, score: top - distance }))],
    free: { score: top - costPerPhone * PHONES, phones: PHONES },
    endedAtMs: 0,
  };
}

const text = (words: string, by: "typed" | "browser" = "typed"): Utterance => ({
  by,
  candidates: [{ words, score: 0 }],
  endedAtMs: 0,
});

const short = (intent: Intent): string =>
  intent.kind === "vitals"
    ? intent.items.map((i) => (i.kind === "vital" ? `${i.code} ${i.value}` : i.kind)).join(", ")
    : intent.kind === "command"
      ? intent.command
      : intent.kind;

function shown(utterance: Utterance, state: GrammarState = "open"): string {
  const heard = interpret(grammars, state, utterance);
  switch (heard.kind) {
    case "meant":
      return `meant ${short(heard.intent)}`;
    case "unsure":
      return `unsure ${heard.why}: ${heard.intents.map(short).join(" / ")}`;
    case "unclear":
    case "outside":
      return heard.kind;
  }
}

const HR = "heart rate eight five";
const RIVAL = "heart rate nine five";

describe("sound: was it in the language", () => {
  it.each([
    ["just well enough to be taken", takeFit + A_LITTLE, "meant hr 85"],
    ["a little worse", takeFit - A_LITTLE, "unsure acoustic: hr 85"],
    ["just well enough to be asked back", askFit + A_LITTLE, "unsure acoustic: hr 85"],
    ["a little worse than that", askFit - A_LITTLE, "outside"],
    ["far below", -5, "outside"],
    ["perfect", 0, "meant hr 85"],
  ])("%s", (_name, cost, expected) => {
    expect(shown(sound(HR, cost))).toBe(expected);
  });
});

describe("sound: a case that speaks against it", () => {
  const surprising = () => true;
  const kindAt = (distance: number, isSurprising?: () => boolean) =>
    interpret(grammars, "open", sound(HR, 0, [RIVAL, distance]), isSurprising).kind;

  it("demands more certainty, and never less", () => {
    expect([kindAt(takeDistance + A_LITTLE), kindAt(takeDistance + A_LITTLE, surprising)]).toEqual(["meant", "unsure"]);
    expect([kindAt(NEAR), kindAt(NEAR, surprising)]).toEqual(["unsure", "unsure"]);
    expect(kindAt(Infinity, surprising)).toBe("meant");
  });
});

describe("sound: could it be something else", () => {
  it.each([
    ["just far enough to be taken", takeDistance + A_LITTLE, "meant hr 85"],
    ["a little nearer", takeDistance - A_LITTLE, "unsure acoustic: hr 85 / hr 95"],
  ])("%s", (_name, distance, expected) => {
    expect(shown(sound(HR, 0, [RIVAL, distance]))).toBe(expected);
  });

  it.each([
    ["the same meaning in other words is no rival", [["heart rate eighty five", 0.1]], "meant hr 85"],
    [
      "a rival behind it still is",
      [
        ["heart rate eighty five", 0.1],
        [RIVAL, 1],
      ],
      "unsure acoustic: hr 85 / hr 95",
    ],
    ["a near path without meaning leaves a doubt", [["left right", 1]], "unsure acoustic: hr 85"],
    [
      "a meaning far behind it is not offered",
      [
        ["left right", 1],
        [RIVAL, 9],
      ],
      "unsure acoustic: hr 85",
    ],
    [
      "a number said two ways is a rival where the best was not",
      [["i c p fifteen one five", 1]],
      "unsure acoustic: hr 85 / icp 15",
    ],
    ["a command is a rival too", [["status", 1]], "unsure acoustic: hr 85 / status"],
  ] as const)("%s", (_name, rivals, expected) => {
    expect(shown(sound(HR, 0, ...rivals))).toBe(expected);
  });

  it("does not hold a number said two ways against itself", () => {
    const twoWays = sound("i c p fifteen one five", 0, ["i c p fifty one five", 0.5]);
    expect(shown(twoWays)).toBe("meant icp 15");
    expect(shown(sound("i c p fifteen one five", 0, ["i c p fifty five zero", 0.5]))).not.toBe("meant icp 15");
  });

  it("takes neither of two that are level", () => {
    expect(["unsure acoustic: hr 85 / hr 95", "unclear"]).toContain(shown(sound(HR, 0, [RIVAL, 0])));
  });

  it("never takes the second path when the best has no meaning", () => {
    expect(shown(sound("left right", 0, [HR, 0.01]))).toBe("outside");
  });

  it("asks which of several meanings clear words have", () => {
    expect(shown(sound("pressure one twenty", 0))).toBe("unsure ambiguous: sbp 120 / map 120");
  });

  it("offers no meaning twice", () => {
    expect(shown(sound("pressure one twenty", 0, ["systolic one twenty", 1]))).toBe(
      "unsure acoustic: sbp 120 / map 120",
    );
  });
});

describe("nothing to go by", () => {
  it.each([
    ["no path at all", { by: "listener", candidates: [], free: { score: -9, phones: 3 }, endedAtMs: 0 }],
    ["empty text", text("")],
    ["blanks", text("   ")],
    ["room talk", text("can somebody hold the door")],
    ["an answer while nothing is asked", text("affirm")],
    ["a bare number while nothing is asked", text("one five")],
  ] as const)("%s", (_name, utterance) => {
    expect(shown(utterance)).toBe("outside");
  });

  it.each([
    ["affirm", "meant affirm"],
    ["one five", "meant number"],
    ["kilopascals", "meant unit"],
  ])("%s is an answer while a question waits", (words, expected) => {
    expect(shown(text(words), "asked")).toBe(expected);
  });
});

describe("text", () => {
  it.each([
    ["icp 15", "meant icp 15"],
    ["HR 90 SpO2 97%", "meant hr 90, spo2 97"],
    ["pressure one twenty", "unsure ambiguous: sbp 120 / map 120"],
  ])("%s", (words, expected) => {
    expect(shown(text(words))).toBe(expected);
    expect(shown(text(words, "browser"))).toBe(expected);
  });
});

describe("a number that no slot admits", () => {
  const ROWS: readonly (readonly [string, string])[] = [
    ["heart rate 300", "meant hr 300"],
    ["weight four hundred kilos", "meant weight 400"],
    ["temperature 50", "meant temp 50"],
    ["sats 94 rate 300", "meant spo2 94, hr 300"],
    ["400/60", "meant sbp 400, dbp 60"],
    ["left pupil 12", "meant pupilLeft 12"],
    // Inside the limits of its vital, but said as nobody says it: still not understood.
    ["age thirty months", "outside"],
    ["heart rate", "outside"],
    ["three hundred", "outside"],
    ["cup of coffee", "outside"],
  ];

  it.each(ROWS)("typed, %s is %s: it is owed an answer that names it", (words, wanted) => {
    expect(shown(text(words))).toBe(wanted);
  });

  it.each(ROWS)("from a browser's recogniser, %s is talk", (words) => {
    expect(shown(text(words, "browser"))).toBe("outside");
  });

  it("from sound, it is talk", () => {
    expect(shown(sound("heart rate three hundred", 0))).toBe("outside");
  });
});
