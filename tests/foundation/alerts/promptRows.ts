import { showSpan } from "../../../src/language/sentences/clock.ts";
import type { Priority } from "../../../src/protocol/priority.ts";
import type { Protocol } from "../../../src/protocol/protocol.ts";
import type { Prompt } from "../../../src/rules/prompts/prompt.ts";

/** What the README tells of a prompt. Its priorities and whether it is repeated are held against the rules by a test. */
export type PromptRow = {
  readonly name: string;
  /** In the order of the phases where it has more than one. */
  readonly priorities: readonly Priority[];
  readonly repeats: boolean;
  /** How often this prompt is called out; `undefined`: it is no time that is called out. */
  readonly calledOut?: true;
  readonly raised: (protocol: Protocol) => string;
  readonly cleared: string;
};

const seconds = ({ value }: { readonly value: number }): string => showSpan(value * 1000);
const minutes = ({ value }: { readonly value: number }): string => showSpan(value * 60_000);

/** In the order of urgency; a prompt that is new does not compile without its row. */
export const PROMPT_ROWS: Readonly<Record<Prompt["promptId"], PromptRow>> = {
  stopAttempt: {
    name: "Out, oxygenate",
    priorities: ["high"],
    repeats: false,
    raised: ({ oxygen }) =>
      `an attempt runs and SpO2 is at or under ${oxygen.stopSpo2Pct.value} %, or the higher one that was agreed`,
    cleared: "SpO2 above it, or the attempt ends",
  },
  noCo2: {
    name: "No CO2 value after a tube",
    priorities: ["high"],
    repeats: true,
    raised: ({ timers }) => `${seconds(timers.co2AfterTubeS)} after "tube in" without an EtCO2 value`,
    cleared: "an EtCO2 value, or the tube is out",
  },
  attemptLimit: {
    name: "Change the plan",
    priorities: ["medium"],
    repeats: true,
    raised: () => "as many attempts failed as were agreed on",
    cleared: "a failed airway is called, another attempt begins, or a tube is in",
  },
  sedationDue: {
    name: "Sedation due",
    priorities: ["medium"],
    repeats: true,
    raised: ({ timers }) => `${seconds(timers.sedationDueS)} after the last sedative, while a relaxant acts longer`,
    cleared: "a sedative is given or runs, or the relaxant has worn off",
  },
  rescueOver: {
    name: "Rescue time is up",
    priorities: ["medium"],
    repeats: true,
    raised: ({ timers }) =>
      `${seconds(timers.herniationMeasuresS)} after the rescue began; also while standing by; once where herniation was only said`,
    cleared: "the question whether to go on is answered, or the rescue ends",
  },
  hyperventilationOver: {
    name: "Hyperventilation time is up",
    priorities: ["medium"],
    repeats: true,
    raised: ({ timers }) => `${seconds(timers.herniationMeasuresS)} after it was called`,
    cleared: "it is called stopped",
  },
  bagLow: {
    name: "Infusion runs out",
    priorities: ["medium"],
    repeats: true,
    raised: ({ timers }) => `the bag is empty within ${seconds(timers.pressureEveryS.usual)}`,
    cleared: "a new rate is set, or the infusion is stopped",
  },
  cylinderLow: {
    name: "Oxygen runs out",
    priorities: ["medium"],
    repeats: true,
    raised: ({ oxygen }) => `the cylinder is at its reserve within ${minutes(oxygen.cylinderWarnMin)}`,
    cleared: "another cylinder or flow is said",
  },
  pressureDue: {
    name: "Pressure due",
    priorities: ["low", "medium"],
    repeats: true,
    raised: ({ timers: { pressureEveryS: every, afterTube } }) =>
      `${seconds(every.usual)} after the last pressure; ${seconds(every.induction)} in induction and intubation (medium), and ${seconds(afterTube.pressureEveryS)} in the first ${seconds(afterTube.forS)} after a tube`,
    cleared: "a pressure",
  },
  pushDoseAgain: {
    name: "Push dose may be repeated",
    priorities: ["low"],
    repeats: true,
    raised: () => "the interval of the dose has passed and a mean called since is under target",
    cleared: "a mean at target, or the dose",
  },
  fullSetDue: {
    name: "Full set due",
    priorities: ["low"],
    repeats: true,
    raised: ({ timers: { fullSetEveryS, watch } }) =>
      `${seconds(fullSetEveryS)} after the oldest value of the set; in the watch phase ${seconds(watch.shortestS)} to ${seconds(watch.longestS)}, longer while all is well`,
    cleared: "the values that are old",
  },
  neuroDue: {
    name: "Pupils and GCS due",
    priorities: ["low"],
    repeats: true,
    raised: ({ timers }) =>
      `${seconds(timers.neuroCheckEveryS)} after the last of them; pupils alone while a relaxant acts`,
    cleared: "pupils or a score",
  },
  osmoticOver: {
    name: "Osmotic agent should be in",
    priorities: ["low"],
    repeats: false,
    raised: () => "the time over which it runs in has passed",
    cleared: "a new dose of it",
  },
  stale: {
    name: "Pressure or sats old",
    priorities: ["low"],
    repeats: false,
    raised: ({ timers }) => `${seconds(timers.staleAfterS)} after the last, in phases that ask for no set`,
    cleared: "a new value",
  },
  watchPhase: {
    name: "Watch phase?",
    priorities: ["low"],
    repeats: false,
    raised: ({ timers }) => `${seconds(timers.afterTube.forS)} after the tube, while the patient settles`,
    cleared: "another phase, or the tube is out",
  },
  preoxygenated: {
    name: "Preoxygenation complete",
    priorities: ["low"],
    repeats: false,
    calledOut: true,
    raised: ({ oxygen }) => `${seconds(oxygen.preoxygenateS)} of it`,
    cleared: "its clock stops",
  },
  apnoea: {
    name: "Length of the apnoea",
    priorities: ["low"],
    repeats: false,
    calledOut: true,
    raised: ({ timers }) => `every ${seconds(timers.apnoeaEveryS)} of it, while no attempt runs`,
    cleared: "its clock stops",
  },
  attempt: {
    name: "Length of the attempt",
    priorities: ["low"],
    repeats: false,
    calledOut: true,
    raised: ({ timers }) => `every ${seconds(timers.attemptS)} of it`,
    cleared: "the attempt ends",
  },
};
