import type { VitalEntry } from "../../log/caseState.ts";
import type { GivenDrug, Handover } from "../../log/handover.ts";
import type { Clock } from "../../rules/clock.ts";
import { aged, type Entry } from "./handoverAged.ts";
import { comma, line, type Line } from "./handoverLine.ts";
import { sayLows } from "./handoverLows.ts";
import type { Pen } from "./handoverPen.ts";
import { CAUSES, herniationWords } from "./statement.ts";

export type PartId =
  | "lows"
  | "patient"
  | "time"
  | "cause"
  | "findings"
  | "given"
  | "airway"
  | "now"
  | "infusions"
  /** That so many run, where not even their names can be said: only in a short handover. */
  | "running"
  | "unconfirmed"
  | "due"
  | "notHeld";

/** What the rules add to the record: names, when bags are empty, what is due. */
export type HandoverContext = {
  readonly handover: Handover;
  readonly nameOf: (id: string) => string;
  /** Unix ms at which the bag of a drug is empty. */
  readonly emptyAtMs: (drugId: string) => number | undefined;
  /** Clocks that end, the next to end first. */
  readonly due: readonly Clock[];
  readonly nowMs: number;
};

/**
 * What gives way where time is short, the highest first. The lowest pressures and what runs never do. This project's choice,
 * no source: before the others stays what harms unseen and cannot be found out anew (a tube that nobody confirmed, a dose
 * that may be in, pupils and score before a paralysis); what the receiving team measures with its own monitor goes sooner.
 */
const RANKS = {
  always: 0,
  airway: 1,
  unconfirmed: 2,
  patient: 3,
  cause: 4,
  relaxant: 5,
  pupils: 6,
  gcs: 7,
  osmotic: 8,
  due: 9,
  perfusion: 10,
  pressor: 11,
  gases: 12,
  otherDrug: 13,
  induction: 14,
  tube: 15,
  time: 16,
  fluids: 17,
  first: 18,
  weight: 19,
  otherNumbers: 20,
  laterDue: 21,
  unconfirmedValue: 22,
} as const;

const DRUG_RANKS: Readonly<Partial<Record<GivenDrug["drugClass"], number>>> = {
  muscleRelaxant: RANKS.relaxant,
  induction: RANKS.induction,
  vasopressor: RANKS.pressor,
  osmotic: RANKS.osmotic,
};

function sayPatient({ patient, sex }: Handover, pen: Pen): readonly Line[] {
  const [age, weight] = (["age", "weight"] as const).map((code) => patient.find((entry) => entry.code === code));
  return [
    ...line("patient", RANKS.patient, comma(age ? pen.entry(age) : "age not recorded", sex)),
    ...line("weight", RANKS.weight, weight ? pen.entry(weight) : ""),
  ];
}

function sayFindings({ findings, herniation }: Handover, pen: Pen, nowMs: number): readonly Line[] {
  const isPupil = ({ code }: Entry): boolean => code === "pupilLeft" || code === "pupilRight";
  const now = findings.map((course) => course.now);
  const first = findings.flatMap((course) => course.first ?? []);
  const isSign = herniation?.present === true;
  const none = "pupils and Glasgow score not recorded";
  return [
    ...line(
      "herniation",
      RANKS.pupils,
      isSign ? comma(herniationWords(true), pen.ago(nowMs - herniation.atMs)) : "",
      isSign ? herniationWords(true) : undefined,
    ),
    ...aged("pupils", RANKS.pupils, now.filter(isPupil), pen, nowMs),
    ...aged(
      "gcs",
      RANKS.gcs,
      now.filter((entry) => !isPupil(entry)),
      pen,
      nowMs,
    ),
    ...line("first", RANKS.first, first.length === 0 ? "" : `at first ${comma(...first.map(pen.entry))}`),
    ...line("noFindings", RANKS.pupils, now.length === 0 ? none : ""),
  ];
}

function sayGiven({ handover: { given, fluids }, nameOf, nowMs }: HandoverContext, pen: Pen): readonly Line[] {
  const newestFirst = given.toSorted((a, b) => b.lastAtMs - a.lastAtMs);
  const rankOf = ({ drugClass }: GivenDrug): number => DRUG_RANKS[drugClass] ?? RANKS.otherDrug;
  return [
    ...newestFirst
      .toSorted((a, b) => rankOf(a) - rankOf(b))
      .flatMap((drug) => {
        const { drugId, total, lastAtMs } = drug;
        const last = total.ok && total.value.count > 1 ? "last " : "";
        const [whole, brief] = [pen.given, pen.givenBriefly].map((words) =>
          comma(words(nameOf(drugId), total), `${last}${pen.ago(nowMs - lastAtMs)}`),
        );
        return line(`given ${drugId}`, rankOf(drug), whole ?? "", brief);
      }),
    ...fluids.flatMap(({ fluidId, volumeMl }) =>
      line(`fluid ${fluidId}`, RANKS.fluids, pen.fluid(nameOf(fluidId), volumeMl)),
    ),
    ...line("nothingGiven", RANKS.pressor, given.length + fluids.length === 0 ? "no drug or fluid recorded" : ""),
  ];
}

function sayAirway({ airway }: Handover, pen: Pen, nowMs: number): readonly Line[] {
  const { attempts, tube, size, depth, supraglottic, failed } = airway;
  const tries = attempts === 0 ? "" : `${pen.count(attempts)} ${attempts === 1 ? "attempt" : "attempts"}`;
  const proof = !tube ? "" : tube.confirmed ? "confirmed" : "not confirmed";
  const co2 = !tube || tube.co2 ? "" : "no CO2 recorded";
  const kit = [size && `tube ${pen.step(size)}`, depth && `depth ${pen.step(depth)}`];
  return [
    ...line("failed", RANKS.airway, failed ? "failed airway called" : ""),
    ...line("supraglottic", RANKS.airway, supraglottic && !tube ? "supraglottic in" : ""),
    ...line(
      "airway",
      RANKS.airway,
      tube ? comma("tube in", tries, pen.ago(nowMs - tube.atMs), proof, co2) : comma("no tube recorded", tries),
      tube ? comma("tube in", tries, proof, co2) : undefined,
    ),
    ...line("kit", RANKS.tube, tube ? comma(...kit) : ""),
  ];
}

const GASES: readonly string[] = ["spo2", "etco2", "hr", "icp"];

function sayNow({ perfusion, numbers }: Handover, pen: Pen, nowMs: number): readonly Line[] {
  const { pressure, map } = perfusion;
  const times = [pressure, map].flatMap((one) => (one === undefined ? [] : [one.atMs]));
  const ago = times.length === 0 ? "" : pen.taken(nowMs - Math.min(...times));
  const isGas = ({ code }: VitalEntry): boolean => GASES.includes(code);
  const [whole, brief] = [pen.perfusion, pen.perfusionBriefly].map((words) =>
    times.length === 0 ? "" : comma(...words(perfusion), ago),
  );
  return [
    ...line("perfusion", RANKS.perfusion, whole ?? "", brief),
    ...aged("gases", RANKS.gases, numbers.filter(isGas), pen, nowMs),
    ...aged(
      "numbers",
      RANKS.otherNumbers,
      numbers.filter((entry) => !isGas(entry)),
      pen,
      nowMs,
    ),
  ];
}

/** What runs, with its rate and when it is empty. Without a rate only where the whole handover is a short one. */
const sayInfusions = (
  { handover: { infusions }, nameOf, emptyAtMs, nowMs }: HandoverContext,
  pen: Pen,
  isBrief: boolean,
): readonly Line[] =>
  infusions.flatMap(([drugId, set]) => {
    const atMs = emptyAtMs(drugId);
    const [whole = "", ...briefer] = pen.infusion(nameOf(drugId), set, atMs === undefined ? undefined : atMs - nowMs);
    return line(`infusion ${drugId}`, RANKS.always, whole, ...(isBrief ? briefer : briefer.slice(0, -1)));
  });

/** Where no letter stands before it, it says itself what it is. */
function sayCause(cause: Handover["cause"], isBrief: boolean): string {
  if (cause === undefined) return "cause not recorded";
  return isBrief ? `cause ${CAUSES[cause]}` : CAUSES[cause];
}

function sayRunning({ handover: { infusions }, nameOf }: HandoverContext, pen: Pen): string {
  const [first, ...others] = infusions;
  if (first === undefined) return "";
  return others.length === 0 ? `${nameOf(first[0])} runs` : `${pen.count(infusions.length)} infusions run`;
}

/** Every part with its lines, in no order: `handoverParts` puts them in that of the protocol. Empty parts have none. */
export function handoverLines(
  context: HandoverContext,
  pen: Pen,
  isBrief: boolean,
): Readonly<Record<PartId, readonly Line[]>> {
  const { handover, nameOf, due, nowMs } = context;
  const { openedAtMs, cause, unconfirmed } = handover;
  return {
    lows: sayLows(handover, RANKS.always, pen, isBrief),
    patient: sayPatient(handover, pen),
    time: line("time", RANKS.time, openedAtMs === undefined ? "" : `case began ${pen.ago(nowMs - openedAtMs)}`),
    cause: line("cause", RANKS.cause, sayCause(cause, isBrief)),
    findings: sayFindings(handover, pen, nowMs),
    given: sayGiven(context, pen),
    airway: sayAirway(handover, pen, nowMs),
    now: sayNow(handover, pen, nowMs),
    infusions: sayInfusions(context, pen, isBrief),
    running: line("running", RANKS.always, isBrief ? sayRunning(context, pen) : ""),
    unconfirmed: unconfirmed.flatMap((one) => {
      const [stated, ago] = [pen.unconfirmed(one, nameOf), pen.ago(nowMs - one.atMs)];
      const words = `not confirmed, not counted: ${stated}`;
      const rank = one.what.kind === "values" ? RANKS.unconfirmedValue : RANKS.unconfirmed;
      return line(`unconfirmed ${one.questionId}`, rank, stated === "" ? "" : comma(words, ago));
    }),
    due: due.flatMap((clock, i) =>
      line(`due ${clock.id} ${clock.subject ?? ""}`, i === 0 ? RANKS.due : RANKS.laterDue, pen.due(clock, nowMs)),
    ),
    notHeld: line("notHeld", RANKS.laterDue, "allergies, medicines and background are not recorded here"),
  };
}
