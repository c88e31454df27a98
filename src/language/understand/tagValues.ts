import type { Sex } from "../../core/bodySize.ts";
import type { PupilReaction } from "../../core/pupils.ts";
import type { VitalCode } from "../../core/vitals.ts";
import { DOSE_UNITS, RATE_UNITS } from "../../core/doseUnits.ts";
import { PHASES, SPOKEN_CLOCKS, type AirwayEvent } from "../../log/careFacts.ts";
import type { Level, Method, SaidUnit, Site, StepAnswer } from "../../log/facts.ts";
import type { TalkLevel } from "../../log/talkFacts.ts";
import type { AlertCause } from "../../rules/alerts/cause.ts";
import type { Cause, Command, WhyAbout } from "../intent.ts";
import type { Mark } from "../jsgf/grammarTypes.ts";
import { HANDOVERS } from "../careIntent.ts";
import { STRUCK_THINGS } from "../strikeIntent.ts";
import type { HowOldAbout, VoiceChange } from "../talkIntent.ts";

/**
 * What may stand after "=" in a tag. A tag outside these lists is a slip in a grammar file: the
 * grammar test finds it, and at run time the reading is dropped, never guessed.
 */
const VALUES = {
  unit: [
    "mmHg",
    "kPa",
    "cmH2O",
    "/min",
    "%",
    "Cel",
    "degF",
    "mmol/L",
    "mg/dL",
    "mm",
    "kg",
    "lb",
    "cm",
    "in",
    "a",
    "mo",
  ] satisfies SaidUnit[],
  method: ["cuff", "arterial", "palpated", "estimated"] satisfies Method[],
  site: [
    "left arm",
    "right arm",
    "left leg",
    "right leg",
    "tympanic",
    "oesophageal",
    "rectal",
    "bladder",
    "skin",
  ] satisfies Site[],
  level: ["tragus", "heart"] satisfies Level[],
  reaction: ["reactive", "brisk", "sluggish", "fixed"] satisfies PupilReaction[],
  side: ["left", "right", "both"],
  notTestable: ["gcsEye", "gcsVerbal", "gcsMotor"] satisfies VitalCode[],
  sex: ["male", "female"] satisfies Sex[],
  cause: ["injury", "bleed", "unknown"] satisfies Cause[],
  herniation: ["suspected", "none"],
  why: [
    "last",
    "alert",
    "dose",
    "map",
    "cpp",
    "sbp",
    "spo2",
    "hr",
    "etco2",
    "icp",
    "temp",
    "glucose",
  ] satisfies WhyAbout[],
  answer: ["done", "not-needed", "later"] satisfies StepAnswer[],
  care: [
    "given",
    "infusion",
    "stopInfusion",
    "howMuch",
    "strength",
    "amount",
    "rate",
    "unit",
    "make",
    "total",
    "equivalents",
    "fluid",
    "cylinder",
  ],
  doseUnit: DOSE_UNITS,
  rateUnit: RATE_UNITS,
  make: ["pushDose", "infusion", "any"],
  phase: [...PHASES, "next"],
  airway: ["bladeIn", "out", "tubeIn", "tubeConfirmed", "tubeOut"] satisfies AirwayEvent[],
  clock: SPOKEN_CLOCKS,
  clockDo: ["start", "stop"],
  list: ["read", "killer", "pause", "left", "failedAirway"],
  waive: ["called"],
  rescue: ["start", "end"],
  tell: ["tube", "ventilation", "attempt"],
  help: ["readings", "drugs", "list", "airway", "clocks", "alerts"],
  heard: [
    "last",
    "pressure",
    "oxygen",
    "co2",
    "heartRate",
    "temperature",
    "glucose",
    "icp",
    "brain",
    "airway",
    "drugs",
    "supplies",
    "checks",
  ] satisfies ("last" | AlertCause)[],
  pause: ["start", "end"],
  case: ["new", "rehearse", "erase", "which"],
  talk: ["full", "brief", "alerts"] satisfies TalkLevel[],
  voice: ["louder", "quieter", "faster", "slower", "usual"] satisfies VoiceChange[],
  howOld: [
    "last",
    "pressure",
    "map",
    "cpp",
    "spo2",
    "hr",
    "rr",
    "etco2",
    "icp",
    "temp",
    "glucose",
  ] satisfies HowOldAbout[],
  of: STRUCK_THINGS,
  handover: HANDOVERS,
  do: [
    "affirm",
    "negative",
    "sayAgain",
    "disregard",
    "standBy",
    "status",
    "readBack",
    "margin",
    "everything",
    "clocks",
    "next",
    "whatCanISay",
    "whichProtocol",
    "hearMe",
    "forgetVoice",
    "notNow",
  ] satisfies Command[],
} as const;

/** Tags whose words are a number of that vital. A pupil's size has its own tag: its side comes from another. */
export const NUMBER_TAGS = [
  "sbp",
  "dbp",
  "map",
  "hr",
  "rr",
  "spo2",
  "etco2",
  "icp",
  "temp",
  "glucose",
  "gcsEye",
  "gcsVerbal",
  "gcsMotor",
  "weight",
  "height",
  "age",
] as const satisfies VitalCode[];

/** Tags that stand alone, besides the numbers. */
const PLAIN_TAGS: readonly string[] = [
  "item",
  "pupil",
  "number",
  "correction",
  "denial",
  "doubtful",
  "twoWaysWhole",
  "twoWaysDigits",
  "amount",
  "rate",
  "volume",
  "kilos",
  "contents",
  "bar",
  "water",
  "flow",
  "value",
  "minutes",
  "strike",
  "was",
  "wasLow",
  "becomes",
  "becomesLow",
  "reason",
  "role",
  "label",
];

type Values = typeof VALUES;
type TagName = keyof Values;

/** The value of the last mark `{name=value}`, if there is one and it is a known value. */
export function tagValue<N extends TagName>(marks: readonly Mark[], name: N): Values[N][number] | undefined {
  const last = marks.findLast(({ tag }) => tag.startsWith(`${name}=`));
  if (last === undefined) return undefined;
  const known: readonly Values[N][number][] = VALUES[name];
  return known.find((value) => last.tag === `${name}=${value}`);
}

/** Tags whose value is an id of the protocol file: which ids exist is its business. */
type IdTag = "step" | "drug" | "fluid" | "group";
const ID_TAGS: readonly IdTag[] = ["step", "drug", "fluid", "group"];

/** The id in the last mark of this name, such as `{step=…}` or `{drug=…}`. */
export const idOf = (marks: readonly Mark[], name: IdTag): string | undefined =>
  marks.findLast(({ tag }) => tag.startsWith(`${name}=`))?.tag.slice(name.length + 1);

/** Whether a tag written in a grammar file is one that understanding reads. */
export function isKnownTag(tag: string): boolean {
  if (ID_TAGS.some((name) => tag.startsWith(`${name}=`) && tag.length > name.length + 1)) return true;
  if (PLAIN_TAGS.includes(tag) || NUMBER_TAGS.some((code) => code === tag)) return true;
  return Object.entries(VALUES).some(([name, values]) => values.some((value) => tag === `${name}=${value}`));
}
