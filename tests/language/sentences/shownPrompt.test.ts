import { describe, expect, it } from "vitest";
import { sayPrompt } from "../../../src/language/sentences/prompt.ts";
import { showPrompt } from "../../../src/language/sentences/shownPrompt.ts";
import type { Prompt, PromptBody } from "../../../src/rules/prompts/prompt.ts";

const MMHG = { co2: "mmHg", glucose: "mmol/L" } as const;
const KPA = { co2: "kPa", glucose: "mmol/L" } as const;
const MIN = 60_000;

const prompt = (body: PromptBody): Prompt => ({ ...body, key: "1", priority: "low", repeats: false });

/** Every prompt there is; a new one does not compile without its rows. */
const ROWS: {
  readonly [Id in Prompt["promptId"]]: readonly (readonly [Extract<PromptBody, { promptId: Id }>, string])[];
} = {
  stopAttempt: [[{ promptId: "stopAttempt", spo2Pct: 88 }, "Out. Oxygenate. SpO2 88 %"]],
  noCo2: [[{ promptId: "noCo2", sinceMs: 31_900 }, "No CO2 value, tube in 31 s ago"]],
  attemptLimit: [
    [{ promptId: "attemptLimit", attempts: 1 }, "1 attempt. Change the plan"],
    [{ promptId: "attemptLimit", attempts: 2 }, "2 attempts. Change the plan"],
  ],
  sedationDue: [[{ promptId: "sedationDue", paralytic: "rocuronium" }, "Sedation due, rocuronium still acts"]],
  rescueOver: [
    [
      {
        promptId: "rescueOver",
        etco2MmHg: { low: 35, high: 45, path: "", source: { reference: "", kind: "memory", primaryRead: false } },
      },
      "Rescue time is up. Target: EtCO2 35 to 45 mmHg",
    ],
  ],
  hyperventilationOver: [[{ promptId: "hyperventilationOver" }, "Hyperventilation time is up"]],
  osmoticOver: [[{ promptId: "osmoticOver", agent: "mannitol" }, "Mannitol should be in"]],
  bagLow: [
    [{ promptId: "bagLow", drug: "adrenaline", leftMs: 4 * MIN + 10_000 }, "Adrenaline empty in 4 min 10 s"],
    [{ promptId: "bagLow", drug: "adrenaline", leftMs: 0 }, "Adrenaline is empty"],
  ],
  cylinderLow: [
    [{ promptId: "cylinderLow", leftMs: 9 * MIN }, "Oxygen cylinder: 9 min to its reserve"],
    [{ promptId: "cylinderLow", leftMs: 0 }, "Oxygen cylinder at its reserve"],
  ],
  pushDoseAgain: [[{ promptId: "pushDoseAgain", drug: "phenylephrine" }, "Phenylephrine may be repeated"]],
  pressureDue: [
    [{ promptId: "pressureDue", ageMs: 4 * MIN + 20_000 }, "Pressure due, last 4 min 20 s ago"],
    [{ promptId: "pressureDue", ageMs: undefined }, "Pressure due"],
  ],
  preoxygenated: [[{ promptId: "preoxygenated", forMs: 3 * MIN }, "Preoxygenation complete, 3 min"]],
  apnoea: [[{ promptId: "apnoea", forMs: 90_000 }, "Apnoea 1 min 30 s"]],
  attempt: [[{ promptId: "attempt", number: 2, forMs: 30_000 }, "Attempt 2, 30 s"]],
  neuroDue: [
    [{ promptId: "neuroDue", pupilsOnly: true }, "Pupils due"],
    [{ promptId: "neuroDue", pupilsOnly: false }, "Pupils and GCS due"],
  ],
  fullSetDue: [[{ promptId: "fullSetDue" }, "Full set due"]],
  stale: [
    [{ promptId: "stale", what: "spo2", ageMs: 10 * MIN + 5000 }, "SpO2 10 min 5 s old"],
    [{ promptId: "stale", what: "pressure", ageMs: 70 * MIN }, "Pressure 1 h 10 min old"],
  ],
  watchPhase: [[{ promptId: "watchPhase", forMs: 10 * MIN }, "Tube in 10 min ago. Watch phase?"]],
};

const rows = Object.values(ROWS).flatMap((of) => [...of] as (readonly [PromptBody, string])[]);

describe("prompts on the screen", () => {
  it.each(rows)("%j", (body, shown) => expect(showPrompt(prompt(body), MMHG)).toBe(shown));

  it.each(rows)("no digit aloud, no full stop at the end of the line: %j", (body, shown) => {
    expect(sayPrompt(prompt(body), MMHG).replaceAll("CO2", "")).not.toMatch(/\d/);
    expect(shown).not.toMatch(/\.$/);
  });

  it("gives the CO2 band in the unit of the place, and asks where measures run", () => {
    const body = ROWS.rescueOver[0]![0];
    expect(showPrompt({ ...prompt(body), asks: true }, KPA)).toBe(
      "Rescue time is up. Target: EtCO2 4.7 to 6.0 kPa. Go on?",
    );
  });
});
