import type { Understanding } from "../../src/language/understand/understand.ts";
import type { CareIntent, SpokenAmount, SpokenRate, SpokenStrength } from "../../src/language/careIntent.ts";
import type { Intent, SaidItem } from "../../src/language/intent.ts";

/** An understanding in the notation of the phrase tables (row.ts). */
export function meantText(understanding: Understanding): string {
  switch (understanding.kind) {
    case "none":
      return "-";
    case "one":
      return intentText(understanding.intent);
    case "many":
      return understanding.intents.map(intentText).sort().join(" || ");
  }
}

function intentText(intent: Intent): string {
  switch (intent.kind) {
    case "vitals":
      return (intent.correction ? "correction: " : "") + intent.items.map(itemText).join(", ");
    case "number":
      return (intent.correction ? "correction: " : "") + spaced("number", String(intent.number.value), intent.unit);
    case "unit":
      return spaced("unit", intent.unit);
    case "command":
      return spaced("do", intent.command);
    case "dose":
      return spaced("dose", intent.drugId);
    case "why":
      return spaced("why", intent.about);
    case "step":
      return spaced(
        "step",
        intent.stepId,
        intent.answer,
        intent.value && String(intent.value.value),
        intent.role && `by ${intent.role}`,
        intent.reason && `as ${intent.reason}`,
      );
    default:
      return careText(intent);
  }
}

/** Every part of what is said of care, by its name: "given drugId=ketamine amount=60 mg". */
function careText({ kind, ...parts }: Exclude<CareIntent, { readonly kind: "step" }>): string {
  return spaced(kind, ...Object.entries(parts).map(([name, part]) => `${name}=${partText(part)}`));
}

function partText(part: string | SpokenAmount | SpokenRate | SpokenStrength): string {
  if (typeof part === "string") return part;
  if ("value" in part) return spaced(String(part.value), part.unit);
  return `${partText(part.amount)} in ${part.volumeMl?.value ?? 1}`;
}

function itemText(item: SaidItem): string {
  switch (item.kind) {
    case "sex":
      return spaced("sex", item.sex);
    case "cause":
      return spaced("cause", item.cause);
    case "herniation":
      return spaced("herniation", item.present ? "suspected" : "none");
    case "finding":
      return spaced(item.code, item.finding);
    case "vital": {
      const how = [item.method, item.site, item.level, item.reaction].filter((x) => x !== undefined).join(", ");
      return spaced(item.code, String(item.value), item.unit, how === "" ? undefined : `(${how})`);
    }
  }
}

const spaced = (...parts: readonly (string | undefined)[]) => parts.filter((x) => x !== undefined).join(" ");
