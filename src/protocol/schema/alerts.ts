import * as v from "valibot";
import { count, notNegative, number, phase, positive, priority, source, sourced, text, vitalCode } from "./parts.ts";

const band = v.strictObject({
  /** Where it begins: at a limit of the targets, whose number depends on the patient, or at a number for everybody. */
  at: v.union([v.picklist(["target", "critical"]), number]),
  /** The limit itself is inside the band. */
  inclusive: v.boolean(),
  priority,
  source,
});

/** Values on one side of their limits. */
export const alert = v.strictObject({
  id: text,
  /** `cppBound`: without a measured ICP, the CPP that is left at the lowest ICP assumed. */
  code: v.picklist(["sbp", "map", "cpp", "cppBound", "spo2", "etco2", "hr", "temp", "glucose", "icp"]),
  side: v.picklist(["under", "over"]),
  /** Counts in these phases alone; absent: in all of them. */
  phases: v.exactOptional(v.pipe(v.array(phase), v.nonEmpty("names no phase"))),
  /** Mildest first. */
  bands: v.pipe(v.array(band), v.nonEmpty("needs a band")),
  /** To clear, a value must stand this far on the good side of the mildest band … */
  clearBy: notNegative,
  /** … this many readings in a row. */
  clearReadings: count,
  /** This much worse than when it was last said: it is said at once, also where the band is the same. */
  worseBy: positive,
  source,
});

/** How pressing the conditions are that no single limit tells. */
export const conditions = v.strictObject({
  /** A new sign of herniation: pupils, motor score, a fall of the score, pressure and rate together. */
  neuroSign: sourced(priority),
  /** A value still at its target falls so that it will cross it before it is next taken. */
  falling: sourced(priority),
  recordNotSaved: sourced(priority),
  microphoneLost: sourced(priority),
});

const confirm = v.strictObject({
  /** Values between two edges lead to the same action; a sound-alike across an edge is asked back. */
  actionEdges: v.array(number),
  /** `always`: thirteen and thirty are asked back whatever they would change. */
  soundAlike: v.picklist(["always", "if-action-differs"]),
  /** Further than this from the last value, within the window: asked back. */
  jump: v.exactOptional(v.strictObject({ by: positive, withinS: positive })),
  source,
});

const codes = vitalCode.options;
export const confirmRules = v.strictObject(
  Object.fromEntries(codes.map((code) => [code, v.exactOptional(confirm)])) as Record<
    (typeof codes)[number],
    v.ExactOptionalSchema<typeof confirm, undefined>
  >,
);

const byPriority = v.strictObject({ high: sourced(positive), medium: sourced(positive), low: sourced(positive) });

export const timers = v.strictObject({
  /** An open question turns into an unconfirmed statement. */
  questionTimeoutS: sourced(positive),
  /** A reading is called stale. */
  staleAfterS: sourced(positive),
  /** "Stand by" holds prompts and questions this long. */
  standByS: sourced(positive),
  reannounceS: byPriority,
  /** A low alert that stands this long becomes a medium one; a high one that nobody has acknowledged is said again, louder. */
  escalateS: v.strictObject({ low: sourced(positive), high: sourced(positive) }),
  /** No more than `most` alerts and prompts are spoken within any `withinS`; the last `keptForNew` only if they are new and pressing. */
  alertCap: v.strictObject({ most: sourced(count), withinS: sourced(positive), keptForNew: sourced(count) }),
  /** Alerts cannot be paused for longer. */
  alertPauseMaxS: sourced(positive),
  /** A prompt that nobody answered is said again. */
  promptAgainS: byPriority,
  /** How often the pressure is taken, and how often around induction. */
  pressureEveryS: v.strictObject({ usual: sourced(positive), induction: sourced(positive) }),
  /** From the induction drug to the prompt for sedation. */
  sedationDueS: sourced(positive),
  /** Measures against herniation are a bridge of this length. */
  herniationMeasuresS: sourced(positive),
  /** After a change of the ventilator: when to look at EtCO2, and when to take a gas. */
  recheckEtco2S: sourced(positive),
  recheckGasS: sourced(positive),
  /** From the tube to the prompt for its EtCO2. */
  co2AfterTubeS: sourced(positive),
  /** How often the length of an attempt, and that of the apnoea, is said. */
  attemptS: sourced(positive),
  apnoeaEveryS: sourced(positive),
  /** How often pupils and score are looked at, and how often every number. */
  neuroCheckEveryS: sourced(positive),
  fullSetEveryS: sourced(positive),
  /** How often the pressure is taken once the tube is in, and for how long. */
  afterTube: v.strictObject({ pressureEveryS: sourced(positive), forS: sourced(positive) }),
  /** While all is well the interval between sets grows from the shortest to the longest, by this factor each time. */
  watch: v.strictObject({
    shortestS: sourced(positive),
    longestS: sourced(positive),
    stretchBy: sourced(v.pipe(number, v.gtValue(1, "must be above 1"))),
  }),
});
