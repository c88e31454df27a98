import { describe, expect, it } from "vitest";
import { normalise } from "../../src/language/normalise/normalise.ts";
import { understand } from "../../src/language/understand/understand.ts";
import { defaultProtocol as protocol } from "../../src/protocol/defaultProtocol.ts";
import type { WatchedCode } from "../../src/protocol/protocol.ts";
import { CAUSE_OF_PROMPT } from "../../src/rules/alerts/cause.ts";
import { standingAlerts } from "../../src/rules/alerts/standing.ts";
import { promptsStanding } from "../../src/rules/promptsDue.ts";
import type { Prompt } from "../../src/rules/prompts/prompt.ts";
import { compiled } from "../phrases/caseGrammars.ts";
import { TalkedCase } from "../app/listState.ts";
import { limitsFor } from "./alerts/alertTable.ts";
import { HEARD_WORDS } from "./alerts/heardWords.ts";
import { PROMPT_ROWS } from "./alerts/promptRows.ts";

/** A case that is talked through line by line; a number is the second up to which time passes. */
class Told {
  readonly case = new TalkedCase();
  private nowS = 0;

  tell(lines: readonly (string | number)[]): this {
    for (const line of lines) {
      if (typeof line === "number") {
        this.case.wait(line - this.nowS);
        this.nowS = line;
        continue;
      }
      // Doses, and values that jump, are asked back first.
      if (this.case.say(line).answer?.outcome === "asked") this.case.say("affirm");
    }
    return this;
  }

  prompts(promptId: string): readonly Prompt[] {
    return promptsStanding(this.case.state.log, protocol, this.nowS * 1000).filter((p) => p.promptId === promptId);
  }

  hasAlert(id: string): boolean {
    return standingAlerts(this.case.state.log, protocol, this.nowS * 1000).some(({ alertId }) => alertId === id);
  }
}

const KETAMINE = ["ketamine 100 milligrams given"];
const ROCURONIUM = ["rocuronium 100 milligrams given"];

/** For each prompt of the table: what raises it, and what clears it. */
const COURSES: Readonly<
  Record<Prompt["promptId"], readonly [raised: readonly (string | number)[], cleared: readonly (string | number)[]]>
> = {
  stopAttempt: [["blade in", 10, "sats 93"], ["out"]],
  noCo2: [["tube in", 30], ["end tidal 38"]],
  attemptLimit: [["attempt limit two", "blade in", 10, "out", "blade in", 20, "out"], ["failed airway"]],
  sedationDue: [[...KETAMINE, ...ROCURONIUM, "apnoea over", "phase watch", 300], KETAMINE],
  rescueOver: [["start rescue", 1200], ["end rescue"]],
  hyperventilationOver: [["hyperventilating", 1200], ["stop hyperventilation"]],
  bagLow: [
    [
      "weight 80 kilos",
      "noradrenaline four milligrams in two fifty",
      "start noradrenaline at point one",
      8 * 3600 + 1100,
    ],
    ["stop noradrenaline"],
  ],
  cylinderLow: [["cylinder six hundred litres at fifteen", 1500], ["cylinder two thousand litres at fifteen"]],
  pressureDue: [["map 95", "phase induce", 60], ["map 96"]],
  pushDoseAgain: [["phenylephrine 100 micrograms given", 300, "map 75"], ["phenylephrine 100 micrograms given"]],
  fullSetDue: [
    ["map 95", "heart rate 80", "sats 97", "phase prepare", 600],
    ["map 96", "heart rate 81", "sats 98"],
  ],
  neuroDue: [["motor five", "phase watch", 900], ["motor five"]],
  osmoticOver: [["weight 80 kilos", "mannitol", "mannitol given", 1201], ["mannitol given"]],
  stale: [["map 95", 600], ["map 96"]],
  watchPhase: [["tube in", "tube confirmed", "end tidal 38", 600], ["phase watch"]],
  preoxygenated: [["oxygen on", 180], ["stop preoxygenation"]],
  apnoea: [["start apnoea", 30], ["stop apnoea"]],
  attempt: [["blade in", 30], ["out"]],
};

describe("the alert table of the README: prompts", () => {
  it.each(Object.entries(COURSES))(
    "%s: raised, its priority, whether it is repeated, cleared",
    (id, [raised, cleared]) => {
      const promptId = id as Prompt["promptId"];
      const told = new Told().tell(raised);
      const [prompt] = told.prompts(promptId);
      const row = PROMPT_ROWS[promptId];
      expect(prompt, "is raised").toBeDefined();
      expect(row.priorities).toContain(prompt?.priority);
      expect(prompt?.repeats).toBe(row.repeats);
      expect(prompt?.callOut).toBe(row.calledOut);
      expect(told.tell(cleared).prompts(promptId), "is cleared").toEqual([]);
    },
  );

  it("the pressure is due with a low priority outside induction", () => {
    const told = new Told().tell(["map 95", "phase resuscitate", 300]);
    expect(told.prompts("pressureDue").map(({ priority }) => priority)).toEqual(["low"]);
  });
});

/** How a value is said; a CPP is not, and is worked out from a mean. */
const SAID: Readonly<Record<Exclude<WatchedCode, "cpp" | "cppBound">, (n: number) => string>> = {
  map: (n) => `map ${n}`,
  sbp: (n) => `systolic ${n}`,
  spo2: (n) => `sats ${n}`,
  etco2: (n) => `end tidal ${n} millimetres`,
  hr: (n) => `heart rate ${n}`,
  temp: (n) => `temp ${n} celsius`,
  glucose: (n) => `glucose ${n} millimoles`,
  icp: (n) => `icp ${n} millimetres`,
};

const rules = protocol.alerts.flatMap((rule) =>
  rule.code === "cpp" || rule.code === "cppBound" ? [] : [{ ...rule, say: SAID[rule.code] }],
);

describe("the alert table of the README: limits do not latch", () => {
  it.each(rules)("$id", (rule) => {
    const { id, code, side, clearBy, clearReadings, bands, say, phases } = rule;
    const [mildest] = bands;
    const at = mildest?.at ?? Number.NaN;
    const limit = typeof at === "number" ? at : (limitsFor(rule)[at] ?? Number.NaN);
    const [bad, good] = side === "under" ? [-1, 1] : [1, -1];
    const step = code === "temp" || code === "glucose" ? 0.1 : 1;
    const tenths = (n: number): number => Math.round(n * 10) / 10;
    const told = new Told().tell([
      ...(id === "sbpHigh" ? ["cause bleed"] : []),
      ...(phases === undefined || phases.includes("assess") ? [] : ["phase settle"]),
      say(tenths(limit + bad * step)),
    ]);
    expect(told.hasAlert(id), "raised").toBe(true);
    for (let i = 1; i < clearReadings; i++) told.tell([i * 30, say(tenths(limit + good * clearBy))]);
    expect(told.hasAlert(id), "one reading is not enough").toBe(true);
    told.tell([600, say(tenths(limit + good * clearBy - good * step))]);
    expect(told.hasAlert(id), "nor is one beside it").toBe(true);
    for (let i = 0; i < clearReadings; i++) told.tell([700 + i * 30, say(tenths(limit + good * clearBy))]);
    expect(told.hasAlert(id), "cleared").toBe(false);
  });
});

describe("the alert table of the README: words that take an alert on", () => {
  const grammar = compiled("case", "askedAfter");

  it.each(Object.entries(HEARD_WORDS))("%s: %s", (cause, words) => {
    const meaning = understand(grammar, normalise(words));
    const about = words === "heard" ? "last" : cause;
    expect(JSON.stringify(meaning)).toContain(JSON.stringify({ kind: "acknowledge", about }));
  });

  it("has one for every prompt that is repeated", () => {
    const repeated = Object.entries(PROMPT_ROWS).filter(([, { repeats }]) => repeats);
    expect(repeated.length).toBeGreaterThan(0);
    for (const [id] of repeated) expect(HEARD_WORDS[CAUSE_OF_PROMPT[id as Prompt["promptId"]]]).toMatch(/^heard ./);
  });
});
