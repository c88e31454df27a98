import { describe, expect, it } from "vitest";
import { playCase } from "../app/playCase.ts";

/** What is said unasked, as "m:ss priority words"; what the lists and the phases say by themselves is left out. */
async function prompted(lines: readonly string[]): Promise<readonly string[]> {
  const { spoke } = await playCase(lines);
  return spoke
    .filter(({ spoke: words }) => !/^Critical, not done|phase\.$|^Back to/u.test(words))
    .map((s) => `${s.at} ${s.priority} ${s.spoke}`);
}

type Case = readonly [name: string, lines: readonly string[], said: readonly string[]];

const ROCURONIUM = ["rocuronium one hundred milligrams given", "affirm"];
const KETAMINE = ["ketamine one hundred milligrams given", "affirm"];

const CASES: readonly Case[] = [
  ["preoxygenation is complete once", ["oxygen on", "[10:00]"], ["3:00 low Preoxygenation complete, three minutes."]],
  ["preoxygenation that was stopped is never complete", ["oxygen on", "[2:00] stop preoxygenation", "[5:00]"], []],
  [
    "the apnoea is told as it grows, until it is over",
    ["start apnoea", "[1:10] stop apnoea", "[3:00]"],
    ["0:30 low Apnoea thirty seconds.", "1:00 low Apnoea one minute."],
  ],
  [
    "an attempt is told as it grows; the pressure is due around it",
    ["map nine five", "phase induce", "blade in", "[1:05] out", "[1:30]"],
    [
      "0:30 low Attempt one, thirty seconds.",
      "1:00 medium Pressure due, last one minute ago.",
      "1:00 low Attempt one, one minute.",
    ],
  ],
  [
    "out and oxygenate at the saturation, once for each value, in place of the alert of that value",
    ["blade in", "[0:10] sats nine three", "[0:15] sats nine two", "[0:20] out", "[0:25] sats nine one"],
    ["0:10 high Out. Oxygenate.", "0:15 high Out. Oxygenate."],
  ],
  ["above that saturation nothing is said", ["blade in", "[0:10] sats nine four", "[0:20] out"], []],
  [
    "the saturation agreed on counts where it is higher",
    ["stop saturation nine five", "blade in", "[0:10] sats nine five", "[0:20] out"],
    ["0:10 high Out. Oxygenate."],
  ],
  [
    "a tube without a CO2 value, until there is one; a tube that was called confirmed too",
    ["map nine five", "tube in", "[0:10] tube confirmed", "[1:05] end tidal three eight", "[1:59]"],
    [
      "0:30 high No CO2 value. Tube in thirty seconds ago.",
      "1:00 high No CO2 value. Tube in one minute ago.",
      "1:00 low Pressure due, last one minute ago.",
    ],
  ],
  ["no prompt for CO2 that came in time", ["map nine five", "tube in", "[0:29] end tidal three eight", "[0:59]"], []],
  [
    "as many attempts as were agreed on",
    [
      "map nine five",
      "attempt limit two",
      "blade in",
      "[0:10] out",
      "blade in",
      "[0:20] out",
      "[0:50] failed airway",
      "[0:55]",
    ],
    ["0:20 medium Two attempts. Change the plan."],
  ],
  [
    "fewer attempts than were agreed on",
    ["map nine five", "attempt limit two", "blade in", "[0:10] out", "[0:50]"],
    [],
  ],
  [
    "sedation is due before the induction drug wears off, and again",
    [...KETAMINE, ...ROCURONIUM, "apnoea over", "phase watch", "[6:30]"],
    ["5:00 medium Sedation due. Rocuronium still acts.", "6:00 medium Sedation due. Rocuronium still acts."],
  ],
  [
    "a second sedative puts it off",
    [
      ...KETAMINE,
      ...ROCURONIUM,
      "apnoea over",
      "phase watch",
      "[4:00] ketamine one hundred milligrams given",
      "affirm",
      "[8:59]",
    ],
    [],
  ],
  ["an induction drug alone asks for no sedation", [...KETAMINE, "phase watch", "[12:00]"], []],
  [
    "the pressure is due by its phase, and again by its priority",
    ["map nine five", "phase resuscitate", "[7:30]"],
    ["5:00 low Pressure due, last five minutes ago.", "7:00 low Pressure due, last seven minutes ago."],
  ],
  [
    "while the patient is first looked at, only an old pressure is named, once",
    ["map nine five", "[15:00]"],
    ["10:00 low Pressure ten minutes old."],
  ],
  [
    "while standing by, only what is of high priority",
    ["start apnoea", "tube in", "stand by", "[0:59]"],
    ["0:30 high No CO2 value. Tube in thirty seconds ago."],
  ],
  ["hyperventilation has its time", ["hyperventilating", "[20:30]"], ["20:00 medium Hyperventilation time is up."]],
  [
    "a rescue has its time; then the usual CO2 band counts again, and going on is asked for",
    ["start rescue", "affirm", "pause the list", "[20:10] negative", "[25:00]"],
    ["20:00 medium Rescue time is up. Target: end tidal thirty five to forty five. Go on?"],
  ],
  ["pupils and score are due", ["motor five", "phase watch", "[16:00]"], ["15:00 low Pupils and Glasgow score due."]],
  [
    "after a tube that has settled, whether to watch is asked once",
    ["tube in", "tube confirmed", "end tidal three eight", "[9:59]", "map nine five", "[10:58]"],
    ["10:00 low Tube in ten minutes. Watch phase?"],
  ],
  [
    "the first fall of the pressure once things are ready: what there is against it, once",
    ["phase resuscitate", "map seven five", "[0:30] map seven four"],
    [
      "0:00 high Measured MAP seventy five, fifteen under ninety.",
      "0:00 low Fluid? Bleeding?",
      "0:30 high Measured MAP seventy five, fifteen under ninety.",
    ],
  ],
];

describe("what is said unasked", () => {
  it.each(CASES)("%s", async (_name, lines, said) => {
    expect(await prompted(lines)).toEqual(said);
  });
});
