import { unreachable } from "../../core/unreachable.ts";
import type { VitalCode } from "../../core/vitals.ts";
import type { SaidUnit } from "../../log/facts.ts";
import type { CareIntent } from "../careIntent.ts";
import type { Intent, SaidItem } from "../intent.ts";

/** Vitals that are said in more than one unit. For the others the unit adds nothing to the meaning. */
const SEVERAL_UNITS: readonly VitalCode[] = ["etco2", "icp", "temp", "glucose", "weight", "height"];

/**
 * The same text for the same meaning, words aside: "one oh five" and "a hundred and five" are one.
 *
 * Order does not count. A unit counts only where it could have been another one.
 * Not for: storage or display; the format may change.
 */
export function meaningKey(intent: Intent): string {
  switch (intent.kind) {
    case "vitals":
      return join("vitals", intent.correction, ...intent.items.map(itemKey).toSorted());
    case "number":
      return join("number", intent.correction, intent.number.value, intent.unit, intent.denies);
    case "unit":
      return join("unit", intent.unit);
    case "command":
      return join("command", intent.command);
    case "dose":
      return join("dose", intent.drugId);
    case "why":
      return join("why", intent.about);
    default:
      return careKey(intent);
  }
}

/** Every part of it that is no wording, in the order of its names. */
const careKey = (intent: CareIntent): string =>
  JSON.stringify(intent, (key, part: unknown) => (key === "words" ? undefined : sorted(part)));

const sorted = (part: unknown): unknown =>
  typeof part === "object" && part !== null ? Object.fromEntries(Object.entries(part).toSorted()) : part;

function itemKey(item: SaidItem): string {
  switch (item.kind) {
    case "vital": {
      const { code, value, unit, method, site, level, reaction } = item;
      return join(code, value, countedUnit(code, unit), method, site, level, reaction);
    }
    case "finding":
      return join(item.code, item.finding);
    case "sex":
      return join("sex", item.sex);
    case "cause":
      return join("cause", item.cause);
    case "herniation":
      return join("herniation", item.present);
    default:
      return unreachable(item);
  }
}

/** An age without a unit is one in years; only months make it another. */
const countedUnit = (code: VitalCode, unit: SaidUnit | undefined) =>
  unit === "mo" || SEVERAL_UNITS.includes(code) ? unit : undefined;

const join = (...parts: readonly (string | number | boolean | undefined)[]) => parts.map((p) => p ?? "").join("|");
