import { slotOf, type Intent } from "../../../src/language/intent.ts";
import type { GrammarState } from "../../../src/app/ports.ts";

/** A question waits: fifteen or fifty? */
export const QUESTION_CASE = ["i c p fifteen"];
const UNIT_ASKED = ["end tidal five"];

export type Start = { readonly file: string; readonly rule: string; readonly before?: readonly string[] };
export type Family = {
  readonly name: string;
  /** Of every hundred statements or so. Vitals most: they are what a mistake can hurt. */
  readonly weight: number;
  readonly kind: "vitals" | "control" | "drugs";
  readonly state: GrammarState;
  /** Rules whose paths belong to it. */
  readonly starts: readonly Start[];
  /** Two or three paths in one breath. */
  readonly joined?: true;
};

const said = (name: string, weight: number, ...rules: readonly string[]): Family => ({
  name,
  weight,
  kind: "vitals",
  state: "open",
  starts: rules.map((rule) => ({ file: "vitals", rule })),
});

/** What is said to the app, and how often. */
export const FAMILIES: readonly Family[] = [
  said("pressure", 16, "pressure"),
  said("map", 7, "mean"),
  said("heart rate", 8, "heartRate"),
  said("saturation", 8, "saturation"),
  said("end tidal", 8, "endTidal"),
  said("icp", 6, "icp"),
  said("breaths", 5, "breaths"),
  said("temperature", 4, "temperature"),
  said("glucose", 4, "glucose"),
  said("gcs", 5, "gcs", "gcsPart"),
  said("pupils", 4, "pupils"),
  said("weight", 3, "weight"),
  said("height", 2, "height"),
  said("age", 2, "age", "old"),
  said("patient", 2, "sex", "cause", "herniation"),
  {
    ...said("several", 6, "pressure", "mean", "heartRate", "saturation", "endTidal", "breaths", "icp", "temperature"),
    joined: true,
  },
  { ...said("correction", 2), starts: [{ file: "case", rule: "corrected" }] },
  { name: "command", weight: 4, kind: "control", state: "open", starts: [{ file: "control", rule: "command" }] },
  { name: "step", weight: 6, kind: "control", state: "open", starts: [{ file: "preparation", rule: "answer" }] },
  {
    name: "answer",
    weight: 6,
    kind: "control",
    state: "asked",
    starts: [
      { file: "control", rule: "verdict", before: QUESTION_CASE },
      { file: "case", rule: "bareNumber", before: QUESTION_CASE },
      { file: "control", rule: "unit", before: UNIT_ASKED },
    ],
  },
  { name: "dose", weight: 6, kind: "drugs", state: "open", starts: [{ file: "drugs", rule: "doseQuestion" }] },
  {
    name: "given",
    weight: 6,
    kind: "drugs",
    state: "open",
    starts: ["given", "infusion", "strengthOf", "fluid"].map((rule) => ({ file: "care", rule })),
  },
  {
    name: "care",
    weight: 3,
    kind: "drugs",
    state: "open",
    starts: ["howMuch", "make", "total", "equivalents", "cylinder"].map((rule) => ({ file: "care", rule })),
  },
  { name: "course", weight: 5, kind: "control", state: "open", starts: [{ file: "course", rule: "course" }] },
  { name: "strike", weight: 4, kind: "control", state: "open", starts: [{ file: "strike", rule: "strike" }] },
  { name: "case", weight: 2, kind: "control", state: "open", starts: [{ file: "record", rule: "record" }] },
  { name: "handover", weight: 1, kind: "control", state: "open", starts: [{ file: "handover", rule: "handover" }] },
  { name: "why", weight: 2, kind: "control", state: "open", starts: [{ file: "drugs", rule: "whyQuestion" }] },
];

const FAMILY_OF_SLOT: Readonly<Record<string, string>> = {
  sbp: "pressure",
  dbp: "pressure",
  map: "map",
  hr: "heart rate",
  rr: "breaths",
  spo2: "saturation",
  etco2: "end tidal",
  icp: "icp",
  temp: "temperature",
  gcsEye: "gcs",
  gcsVerbal: "gcs",
  gcsMotor: "gcs",
  pupilLeft: "pupils",
  pupilRight: "pupils",
  sex: "patient",
  cause: "patient",
  herniation: "patient",
};

/** To which family a meaning belongs, whatever rule its words came from. */
export function familyOf(intent: Intent): string {
  switch (intent.kind) {
    case "vitals": {
      if (intent.correction) return "correction";
      const families = new Set(intent.items.map((item) => FAMILY_OF_SLOT[slotOf(item)] ?? slotOf(item)));
      return families.size === 1 ? [...families][0]! : "several";
    }
    case "number":
      return intent.correction ? "correction" : "answer";
    case "unit":
      return "answer";
    case "command":
      return intent.command === "affirm" || intent.command === "negative" ? "answer" : "command";
    case "dose":
    case "why":
    case "step":
    case "strike":
    case "handover":
      return intent.kind;
    case "newCase":
    case "eraseCase":
    case "whichCase":
      return "case";
    case "amount":
    case "rate":
    case "doseUnit":
      return "answer";
    case "given":
    case "infusion":
    case "strength":
    case "fluid":
      return "given";
    case "howMuch":
    case "make":
    case "total":
    case "equivalents":
    case "cylinder":
      return "care";
    default:
      return "course";
  }
}

/** What the best meaning of an utterance is, for those who fit a decision by kinds. */
export type MeaningKind = "vitals" | "command" | "step" | "dose" | "why" | "number" | "answer" | "care" | "none";

const KINDS: readonly MeaningKind[] = ["dose", "why", "step", "answer", "command"];

export function kindOf(intents: readonly Intent[]): MeaningKind {
  const [first] = intents;
  if (first === undefined) return "none";
  if (first.kind === "vitals" || first.kind === "number") return first.kind;
  const family = familyOf(first);
  return KINDS.find((kind) => kind === family) ?? "care";
}
