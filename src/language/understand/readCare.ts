import type { Intent } from "../intent.ts";
import type { SaidNumber } from "../saidNumber.ts";
import type { SpokenAmount, SpokenRate } from "../careIntent.ts";
import type { Parse } from "../jsgf/grammarTypes.ts";
import { readCase } from "./readCase.ts";
import { readTalk } from "./readTalk.ts";
import { saidNumber } from "./saidNumber.ts";
import { idOf, tagValue } from "./tagValues.ts";

/** A number of this tag: none where it was not said, "unreadable" where its words are no number. */
function numberOf(parse: Parse, tag: string): SaidNumber | undefined | "unreadable" {
  const mark = parse.find((m) => m.tag === tag);
  return mark === undefined ? undefined : (saidNumber(mark, parse, "both") ?? "unreadable");
}

const STRUCK_NUMBERS = ["was", "wasLow", "becomes", "becomesLow"] as const;
type Numbers = Readonly<Partial<Record<(typeof TAGS)[number], SaidNumber>>>;
const TAGS = [
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
  ...STRUCK_NUMBERS,
] as const;

function numbersOf(parse: Parse): Numbers | undefined {
  const numbers: Partial<Record<(typeof TAGS)[number], SaidNumber>> = {};
  for (const tag of TAGS) {
    const said = numberOf(parse, tag);
    if (said === "unreadable") return undefined;
    if (said !== undefined) numbers[tag] = said;
  }
  return numbers;
}

const wordsOf = (parse: Parse, tag: string): string | undefined => parse.find((m) => m.tag === tag)?.words.join(" ");

/** `{ [name]: value }`, or nothing where there is no value: an absent part of an intent is left out, not undefined. */
const part = <N extends string, T>(name: N, value: T | undefined): { [K in N]?: T } =>
  (value === undefined ? {} : { [name]: value }) as { [K in N]?: T };

function readDrugs(parse: Parse, care: ReturnType<typeof tagValue<"care">>, numbers: Numbers): readonly Intent[] {
  const drugId = idOf(parse, "drug");
  const doseUnit = tagValue(parse, "doseUnit");
  const rateUnit = tagValue(parse, "rateUnit");
  const amount: SpokenAmount | undefined = numbers.amount && { ...numbers.amount, ...part("unit", doseUnit) };
  const rate: SpokenRate | undefined = numbers.rate && { ...numbers.rate, ...part("unit", rateUnit) };
  switch (care) {
    case undefined:
      return drugId === undefined ? [] : [{ kind: "dose", drugId }];
    case "given":
      return [{ kind: "given", ...part("drugId", drugId), ...part("amount", amount) }];
    case "infusion":
      return drugId === undefined ? [] : [{ kind: "infusion", drugId, change: "set", ...part("rate", rate) }];
    case "stopInfusion":
      return drugId === undefined ? [] : [{ kind: "infusion", drugId, change: "stop" }];
    case "howMuch":
      if (drugId === undefined) return [];
      return [{ kind: "howMuch", drugId, ...part("weightKg", numbers.kilos), ...part("rate", rate) }];
    case "strength": {
      if (amount === undefined) return [];
      const strength = { amount, ...part("volumeMl", numbers.volume) };
      return [{ kind: "strength", ...part("drugId", drugId), strength }];
    }
    case "amount":
      return amount === undefined ? [] : [{ kind: "amount", amount }];
    case "rate":
      return rate === undefined ? [] : [{ kind: "rate", rate }];
    case "unit": {
      const unit = rateUnit ?? doseUnit;
      return unit === undefined ? [] : [{ kind: "doseUnit", unit }];
    }
    case "make": {
      const purpose = tagValue(parse, "make");
      return drugId === undefined || purpose === undefined ? [] : [{ kind: "make", drugId, purpose }];
    }
    case "total":
      return [{ kind: "total", ...part("drugId", drugId) }];
    case "equivalents":
      return drugId === undefined ? [] : [{ kind: "equivalents", drugId }];
    case "fluid": {
      const fluidId = idOf(parse, "fluid");
      if (fluidId === undefined || numbers.volume === undefined) return [];
      return [{ kind: "fluid", fluidId, volumeMl: numbers.volume }];
    }
    case "cylinder": {
      const { contents, bar, water, flow } = numbers;
      const contentsOf = { ...part("contentsL", contents), ...part("pressureBar", bar), ...part("waterL", water) };
      return [{ kind: "cylinder", ...contentsOf, ...part("flowLPerMin", flow) }];
    }
  }
}

function readStep(parse: Parse, { value }: Numbers): Intent | undefined {
  const answer = tagValue(parse, "answer");
  if (answer === undefined) return undefined;
  return {
    kind: "step",
    answer,
    ...part("stepId", idOf(parse, "step")),
    ...part("value", value),
    ...part("reason", wordsOf(parse, "reason")),
    ...part("role", wordsOf(parse, "role")),
  };
}

function readCourse(parse: Parse): Intent | undefined {
  const phase = tagValue(parse, "phase");
  if (phase !== undefined) return { kind: "phase", phase };
  const event = tagValue(parse, "airway");
  if (event !== undefined) return { kind: "airway", event };
  const clock = tagValue(parse, "clock");
  const change = tagValue(parse, "clockDo");
  if (clock !== undefined && change !== undefined) return { kind: "clock", clock, change };
  const ask = tagValue(parse, "list");
  if (ask !== undefined) return { kind: "list", ask, ...part("group", idOf(parse, "group")) };
  if (tagValue(parse, "waive") !== undefined) return { kind: "waive", ...part("reason", wordsOf(parse, "reason")) };
  const rescue = tagValue(parse, "rescue");
  if (rescue !== undefined) return { kind: "rescue", change: rescue };
  const about = tagValue(parse, "tell");
  if (about !== undefined) return { kind: "tell", about };
  const topic = tagValue(parse, "help");
  return topic === undefined ? undefined : { kind: "help", topic };
}

/** An entry to strike, with the numbers that were said of it. */
function readStrike(parse: Parse, { was, wasLow, becomes, becomesLow }: Numbers): readonly Intent[] {
  const of = tagValue(parse, "of");
  if (of === undefined) return [];
  const numbers = {
    ...part("was", was),
    ...part("wasLow", wasLow),
    ...part("becomes", becomes),
    ...part("becomesLow", becomesLow),
  };
  return [{ kind: "strike", of, ...part("id", idOf(parse, "drug") ?? idOf(parse, "fluid")), ...numbers }];
}

/**
 * What is said of drugs, steps, the course of the case and the voice itself. Undefined: it is about something else. Empty: it was meant for
 * this, but a number in it cannot be read.
 */
export function readCare(parse: Parse): readonly Intent[] | undefined {
  const care = tagValue(parse, "care");
  const numbers = numbersOf(parse);
  const how = tagValue(parse, "handover");
  if (how !== undefined) return [{ kind: "handover", how }];
  if (parse.some(({ tag }) => tag === "strike")) return numbers === undefined ? [] : readStrike(parse, numbers);
  const isCare = care !== undefined || idOf(parse, "drug") !== undefined || tagValue(parse, "answer") !== undefined;
  if (numbers === undefined) return isCare ? [] : undefined;
  const step = readStep(parse, numbers);
  if (step !== undefined) return [step];
  const course = readCourse(parse);
  if (course !== undefined) return [course];
  const ofCase = readCase(parse);
  if (ofCase !== undefined) return [ofCase];
  const talk = readTalk(parse, numbers.minutes);
  if (talk !== undefined) return [talk];
  return isCare ? readDrugs(parse, care, numbers) : undefined;
}
