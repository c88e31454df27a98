import * as v from "valibot";
import { byAge, choice, notNegative, number, positive, range, source, sourced, text } from "./parts.ts";

/** A pressure to be held above `target`; under `critical` it is an emergency. */
const floor = v.strictObject({ target: sourced(byAge), critical: sourced(byAge) });

/** Whom a set of pressure targets is for. Together the populations cover every age once. */
const population = v.strictObject({
  id: text,
  label: text,
  kind: v.picklist(["adult", "child"]),
  fromAgeA: notNegative,
  belowAgeA: positive,
  sbpMmHg: floor,
  mapMmHg: floor,
  cppMmHg: v.strictObject({ ...floor.entries, noGainAbove: sourced(number) }),
  icpTreatAboveMmHg: sourced(number),
  /** Heart rates that need no word, and those outside which it is an emergency. */
  hrPerMin: v.strictObject({ target: sourced(range), critical: sourced(range) }),
  /** Where the ages come from. */
  source,
  choice: v.exactOptional(choice),
});

/** Why ICP is raised. Some causes bound the pressure from above too. */
const cause = v.strictObject({
  id: v.picklist(["injury", "bleed", "unknown"]),
  label: text,
  /** Systolic of an adult to be held within; `aim` lies inside. Its `low` counts only where it is above the floor of the age. */
  sbpRangeMmHg: v.exactOptional(sourced(v.strictObject({ low: number, aim: number, high: number }))),
});

export const targets = v.strictObject({
  populations: v.pipe(v.array(population), v.nonEmpty("needs a population")),
  /** The population that counts until an age is known. */
  unknownAge: sourced(text),
  /** The cause that counts until one is said. */
  causes: v.pipe(v.array(cause), v.nonEmpty("needs a cause")),
  /** While herniation is being treated, no ceiling on pressure counts. */
  herniationSparesPressure: sourced(v.boolean()),
  /** What floors are raised to while herniation is treated. Critical limits stay where they are. */
  herniation: v.strictObject({
    /** The mean pressure must carry the CPP target with this ICP. */
    assumedIcpMmHg: sourced(number),
    /** The systolic target of an adult is this at least. */
    sbpMmHg: sourced(number),
  }),
  spo2Pct: v.strictObject({ target: sourced(number), critical: sourced(number) }),
  etco2MmHg: v.strictObject({ usual: sourced(range), herniation: sourced(range) }),
  paco2MmHg: sourced(range),
  pao2MmHg: sourced(range),
  tempCel: v.strictObject({ hold: sourced(range), treatFrom: sourced(number) }),
  glucoseMmolPerL: v.strictObject({ hold: sourced(range), treatBelow: sourced(number) }),
  sodiumMmolPerL: sourced(range),
  osmolalityStopMosmPerKg: sourced(number),
});
