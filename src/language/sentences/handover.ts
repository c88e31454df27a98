import type { FindingEntry, VitalEntry } from "../../log/caseState.ts";
import type { GivenDrug, Handover, Low } from "../../log/handover.ts";
import type { Clock } from "../../rules/clock.ts";
import type { Pen } from "./handoverPen.ts";
import { CAUSES, herniationWords } from "./statement.ts";

/** One thing that is handed over, and how dear it is: what has a higher rank gives way first where time is short. */
export type Line = { readonly text: string; readonly rank: number };

export type PartId =
  "lows" | "patient" | "time" | "cause" | "findings" | "given" | "airway" | "now" | "infusions" | "due" | "notHeld";

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
 * What gives way where time is short, the last first. The lowest pressures never do. This project's choice, no source: what
 * the next hour of care hangs on stays, what the receiving team will measure or read anew goes.
 */
const RANKS = {
  lows: 0,
  airway: 1,
  patient: 2,
  perfusion: 3,
  infusions: 4,
  relaxant: 5,
  cause: 6,
  pupils: 7,
  gases: 8,
  induction: 9,
  pressor: 10,
  osmotic: 11,
  gcs: 12,
  due: 13,
  tube: 14,
  time: 15,
  first: 16,
  otherDrug: 17,
  fluids: 18,
  otherNumbers: 19,
  weight: 20,
  laterDue: 21,
} as const;

const DRUG_RANKS: Readonly<Partial<Record<GivenDrug["drugClass"], number>>> = {
  muscleRelaxant: RANKS.relaxant,
  induction: RANKS.induction,
  vasopressor: RANKS.pressor,
  osmotic: RANKS.osmotic,
};

const comma = (...parts: readonly (string | undefined)[]): string =>
  parts.filter((part) => part !== undefined && part !== "").join(", ");
const line = (rank: number, text: string): readonly Line[] => (text === "" ? [] : [{ rank, text }]);

/** "Nine minutes under ninety", "no reading under ninety". */
function under({ targetMmHg, underMin, anyUnder, isLeast }: Low, pen: Pen): string {
  const target = `under ${pen.count(targetMmHg)}`;
  if (!anyUnder) return `no reading ${target}`;
  if (underMin === 0) return `${target}, how long unknown`;
  const whole = Math.round(underMin);
  const long = whole === 0 ? "less than a minute" : pen.minutes(whole);
  return `${isLeast ? "at least " : ""}${long} ${target}`;
}

/** The same where time is short: the target is not named, nor is its name said twice. */
function sayLowsBriefly(lows: readonly Low[], pen: Pen): string {
  const said = lows.map((low, i) => {
    const { underMin, anyUnder, isLeast } = low;
    const whole = Math.max(1, Math.round(underMin));
    const known = `${isLeast ? "at least " : ""}${pen.minutes(whole)}`;
    const long = !anyUnder ? "none" : underMin === 0 ? "unknown time" : known;
    return comma(pen.low(low), `${long}${i === 0 ? " under target" : ""}`);
  });
  return `Lowest ${said.join("; ")}`;
}

function sayLows({ lows }: Handover, pen: Pen, isBrief: boolean): readonly Line[] {
  if (lows.length === 0) return line(RANKS.lows, "No pressure recorded");
  if (isBrief) return line(RANKS.lows, sayLowsBriefly(lows, pen));
  return lows.flatMap((low) => line(RANKS.lows, `Lowest ${comma(pen.low(low), under(low, pen))}`));
}

type Entry = VitalEntry | FindingEntry;

/** Those of one age together, each with that age. */
function aged(rank: number, entries: readonly Entry[], pen: Pen, nowMs: number): readonly Line[] {
  const agoOf = ({ atMs }: Entry): string => pen.ago(nowMs - atMs);
  return [...new Set(entries.map(agoOf))].flatMap((ago) =>
    line(rank, comma(...entries.filter((entry) => agoOf(entry) === ago).map(pen.entry), ago)),
  );
}

function sayPatient({ patient, sex }: Handover, pen: Pen): readonly Line[] {
  const [age, weight] = (["age", "weight"] as const).map((code) => patient.find((entry) => entry.code === code));
  return [
    ...line(RANKS.patient, comma(age ? pen.entry(age) : "age not recorded", sex)),
    ...line(RANKS.weight, weight ? pen.entry(weight) : ""),
  ];
}

function sayFindings({ findings, herniation }: Handover, pen: Pen, nowMs: number): readonly Line[] {
  const isPupil = ({ code }: Entry): boolean => code === "pupilLeft" || code === "pupilRight";
  const now = findings.map((course) => course.now);
  const first = findings.flatMap((course) => course.first ?? []);
  const sign = herniation?.present ? comma(herniationWords(true), pen.ago(nowMs - herniation.atMs)) : "";
  return [
    ...line(RANKS.pupils, sign),
    ...aged(RANKS.pupils, now.filter(isPupil), pen, nowMs),
    ...aged(
      RANKS.gcs,
      now.filter((entry) => !isPupil(entry)),
      pen,
      nowMs,
    ),
    ...line(RANKS.first, first.length === 0 ? "" : `at first ${comma(...first.map(pen.entry))}`),
    ...(now.length === 0 ? line(RANKS.pupils, "pupils and Glasgow score not recorded") : []),
  ];
}

function sayGiven({ handover: { given, fluids }, nameOf, nowMs }: HandoverContext, pen: Pen): readonly Line[] {
  const newestFirst = given.toSorted((a, b) => b.lastAtMs - a.lastAtMs);
  const rankOf = ({ drugClass }: GivenDrug): number => DRUG_RANKS[drugClass] ?? RANKS.otherDrug;
  return [
    ...newestFirst
      .toSorted((a, b) => rankOf(a) - rankOf(b))
      .flatMap((drug) => {
        const last = drug.total.ok && drug.total.value.count > 1 ? "last " : "";
        const words = pen.given(nameOf(drug.drugId), drug.total);
        return line(rankOf(drug), comma(words, `${last}${pen.ago(nowMs - drug.lastAtMs)}`));
      }),
    ...fluids.flatMap(({ fluidId, volumeMl }) => line(RANKS.fluids, pen.fluid(nameOf(fluidId), volumeMl))),
    ...(given.length + fluids.length === 0 ? line(RANKS.pressor, "no drug or fluid recorded") : []),
  ];
}

function sayAirway({ airway }: Handover, pen: Pen, nowMs: number): readonly Line[] {
  const { attempts, tube, size, depth, supraglottic, failed } = airway;
  const tries = attempts === 0 ? "" : `${pen.count(attempts)} ${attempts === 1 ? "attempt" : "attempts"}`;
  const proof = !tube ? "" : tube.confirmed ? "confirmed" : "not confirmed";
  const co2 = !tube || tube.co2 ? "" : "no CO2 recorded";
  const kit = [size && `tube ${pen.step(size)}`, depth && `depth ${pen.step(depth)}`];
  return [
    ...line(RANKS.airway, failed ? "failed airway" : ""),
    ...line(RANKS.airway, supraglottic && !tube ? "supraglottic in" : ""),
    ...line(
      RANKS.airway,
      tube ? comma("tube in", tries, pen.ago(nowMs - tube.atMs), proof, co2) : comma("no tube recorded", tries),
    ),
    ...line(RANKS.tube, tube ? comma(...kit) : ""),
  ];
}

const GASES: readonly string[] = ["spo2", "etco2", "hr", "icp"];

function sayNow({ perfusion, numbers }: Handover, pen: Pen, nowMs: number): readonly Line[] {
  const { pressure, map } = perfusion;
  const times = [pressure, map].flatMap((one) => (one === undefined ? [] : [one.atMs]));
  const ago = times.length === 0 ? "" : pen.ago(nowMs - Math.min(...times));
  const isGas = ({ code }: VitalEntry): boolean => GASES.includes(code);
  return [
    ...line(RANKS.perfusion, times.length === 0 ? "" : comma(...pen.perfusion(perfusion), ago)),
    ...aged(RANKS.gases, numbers.filter(isGas), pen, nowMs),
    ...aged(
      RANKS.otherNumbers,
      numbers.filter((entry) => !isGas(entry)),
      pen,
      nowMs,
    ),
  ];
}

/** Every part with its lines, in no order: `handoverParts` puts them in that of the protocol. Empty parts have none. */
export function handoverLines(
  context: HandoverContext,
  pen: Pen,
  isBrief: boolean,
): Readonly<Record<PartId, readonly Line[]>> {
  const { handover, nameOf, emptyAtMs, due, nowMs } = context;
  const { openedAtMs, cause, infusions } = handover;
  return {
    lows: sayLows(handover, pen, isBrief),
    patient: sayPatient(handover, pen),
    time: line(RANKS.time, openedAtMs === undefined ? "" : `case began ${pen.ago(nowMs - openedAtMs)}`),
    cause: line(RANKS.cause, cause === undefined ? "cause not recorded" : CAUSES[cause]),
    findings: sayFindings(handover, pen, nowMs),
    given: sayGiven(context, pen),
    airway: sayAirway(handover, pen, nowMs),
    now: sayNow(handover, pen, nowMs),
    infusions: infusions.flatMap(([drugId, { rate, mlPerH }]) => {
      const atMs = emptyAtMs(drugId);
      return line(
        RANKS.infusions,
        pen.infusion(nameOf(drugId), { rate, mlPerH }, atMs === undefined ? undefined : atMs - nowMs),
      );
    }),
    due: due.flatMap((clock, i) => line(i === 0 ? RANKS.due : RANKS.laterDue, pen.due(clock, nowMs))),
    notHeld: line(RANKS.laterDue, "allergies, medicines and background are not recorded here"),
  };
}
