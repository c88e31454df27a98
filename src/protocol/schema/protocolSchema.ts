import * as v from "valibot";
import { alert, conditions, confirmRules, timers } from "./alerts.ts";
import { drug, fluid, osmotic } from "./drugs.ts";
import { HANDOVER_STRUCTURES } from "../handoverStructures.ts";
import { positive, range, region, sourced, text } from "./parts.ts";
import { lowPressure, oxygen, pressures, shock, trend, tubes, ventilation } from "./physiology.ts";
import { group } from "./steps.ts";
import { targets } from "./targets.ts";

/**
 * The shape of a protocol file: its type and its published JSON Schema come from here too.
 * Unknown keys are refused: a misspelt one would otherwise be silently without effect.
 */
export const protocolSchema = v.strictObject({
  schema: v.literal(3),
  name: text,
  version: text,
  owner: text,
  date: v.pipe(v.string(), v.isoDate("must be a date, year-month-day")),
  /** `example`: nobody has approved it for patients; that is shown and said. `approved`: its owner has. */
  status: v.picklist(["example", "approved"]),
  /** The caution shown with the name. */
  caution: text,
  region: v.strictObject({
    drugNames: region,
    co2: v.picklist(["mmHg", "kPa"]),
    glucose: v.picklist(["mmol/L", "mg/dL"]),
  }),
  readBack: v.strictObject({
    /** After a pressure, its mean against the target is said too. */
    consequence: sourced(v.boolean()),
  }),
  handover: v.strictObject({
    /** The mnemonic that orders and names what follows the lowest pressures, which always come first. */
    structure: sourced(v.picklist(HANDOVER_STRUCTURES)),
  }),
  targets,
  /** The range drawn and spoken while ICP is not measured. Always called assumed. */
  assumedIcpMmHg: sourced(range),
  pressures,
  shock,
  trend,
  lowPressure,
  alerts: v.array(alert),
  conditions,
  groups: v.array(group),
  drugs: v.array(drug),
  fluids: v.array(fluid),
  osmotics: v.array(osmotic),
  doses: v.strictObject({
    /** A given amount further than this from the plan is asked back, with both numbers. */
    askBackOverPct: sourced(positive),
  }),
  permissions: v.strictObject({
    /** Hyperosmolar treatment before hospital. */
    osmotherapyPrehospital: sourced(v.boolean()),
    tranexamicAcidPrehospital: sourced(v.boolean()),
    /** Mannitol may be proposed while systolic pressure is under its target. */
    mannitolBelowSbpTarget: sourced(v.boolean()),
  }),
  oxygen,
  ventilation,
  tubes,
  confirm: confirmRules,
  timers,
});
