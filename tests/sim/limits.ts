/**
 * The numbers of a protocol file, read by the judge of the simulated clinician from the file itself: nothing of the app's
 * rules or of how it works targets out has a part in this.
 */

export type Severity = "low" | "medium" | "high";
const RANK: Readonly<Record<Severity, number>> = { low: 1, medium: 2, high: 3 };
/** Higher is worse; 0 is none. */
export const rank = (severity: Severity | undefined): number => (severity === undefined ? 0 : RANK[severity]);

export type Side = "under" | "over";
/** What is known of the patient. */
export type Known = {
  readonly ageA: number | undefined;
  readonly cause: string;
  readonly herniating: boolean;
  /** The lower CO2 band of the rescue counts. */
  readonly co2Spared: boolean;
};
export type Band = { readonly limit: number; readonly inclusive: boolean; readonly severity: Severity };
export type Rule = {
  readonly id: string;
  readonly code: string;
  readonly side: Side;
  readonly phases: readonly string[] | undefined;
  readonly bands: (known: Known) => readonly Band[];
};

/** Protocol values without their sources. */
type Bare = Readonly<Record<string, unknown>>;

function bare(json: unknown): unknown {
  if (Array.isArray(json)) return json.map(bare);
  if (typeof json !== "object" || json === null) return json;
  const group = json as Bare;
  if ("value" in group && "source" in group) return bare(group["value"]);
  return Object.fromEntries(Object.entries(group).map(([key, value]) => [key, bare(value)]));
}

type ByAge = number | { readonly base: number; readonly perYear: number };
type Floor = { readonly target: ByAge; readonly critical: ByAge };
type Range = { readonly low: number; readonly high: number };
type Population = {
  readonly id: string;
  readonly kind: string;
  readonly fromAgeA: number;
  readonly belowAgeA: number;
  readonly sbpMmHg: Floor;
  readonly mapMmHg: Floor;
  readonly cppMmHg: Floor;
  readonly icpTreatAboveMmHg: ByAge;
  readonly hrPerMin?: { readonly target: Range; readonly critical: Range };
};
type File = {
  readonly targets: {
    readonly populations: readonly Population[];
    readonly unknownAge: string;
    readonly causes: readonly { readonly id: string; readonly sbpRangeMmHg?: Range }[];
    readonly herniationSparesPressure: boolean;
    readonly herniation: { readonly assumedIcpMmHg: number; readonly sbpMmHg: number };
    readonly spo2Pct: { readonly target: number; readonly critical: number };
    readonly etco2MmHg: { readonly usual: Range; readonly herniation: Range };
    readonly tempCel: { readonly hold: Range; readonly treatFrom: number };
    readonly glucoseMmolPerL: { readonly hold: Range; readonly treatBelow: number };
  };
  readonly assumedIcpMmHg: Range;
  readonly pressures: { readonly apartMmHg: number };
  readonly alerts: readonly {
    readonly id: string;
    readonly code: string;
    readonly side?: Side;
    readonly phases?: readonly string[];
    readonly bands: readonly {
      readonly at?: string | number;
      readonly under?: string | number;
      readonly inclusive: boolean;
      readonly priority: Severity;
    }[];
  }[];
};
type Numbers = { readonly target?: number | undefined; readonly critical?: number | undefined };

/** Every limit of a patient by what it limits and on which side, e.g. "map under". */
function numbersOf({ targets }: File, known: Known): Readonly<Record<string, Numbers>> {
  const { ageA, cause, herniating, co2Spared } = known;
  const isOf = (p: Population): boolean =>
    ageA === undefined ? p.id === targets.unknownAge : ageA >= p.fromAgeA && ageA < p.belowAgeA;
  const of = targets.populations.find(isOf)!;
  const years = Math.floor(ageA ?? of.fromAgeA);
  const at = (value: ByAge): number => (typeof value === "number" ? value : value.base + value.perYear * years);
  const isAdult = of.kind === "adult";
  const range = isAdult ? targets.causes.find(({ id }) => id === cause)?.sbpRangeMmHg : undefined;
  const sbp = [at(of.sbpMmHg.target), range?.low ?? 0, herniating && isAdult ? targets.herniation.sbpMmHg : 0];
  const map = [at(of.mapMmHg.target), herniating ? at(of.cppMmHg.target) + targets.herniation.assumedIcpMmHg : 0];
  const cpp = { target: at(of.cppMmHg.target), critical: at(of.cppMmHg.critical) };
  const co2 = herniating && co2Spared ? targets.etco2MmHg.herniation : targets.etco2MmHg.usual;
  const spared = herniating && targets.herniationSparesPressure;
  const { hold, treatFrom } = targets.tempCel;
  const sugar = targets.glucoseMmolPerL;
  return {
    "sbp under": { target: Math.max(...sbp), critical: at(of.sbpMmHg.critical) },
    "sbp over": { target: spared ? undefined : range?.high },
    "map under": { target: Math.max(...map), critical: at(of.mapMmHg.critical) },
    "cpp under": cpp,
    "cppBound under": cpp,
    "spo2 under": targets.spo2Pct,
    "etco2 under": { target: co2.low },
    "etco2 over": { target: co2.high },
    "hr under": { target: of.hrPerMin?.target.low, critical: of.hrPerMin?.critical.low },
    "hr over": { target: of.hrPerMin?.target.high, critical: of.hrPerMin?.critical.high },
    "temp under": { target: hold.low },
    "temp over": { target: hold.high, critical: treatFrom },
    "glucose under": { target: sugar.hold.low, critical: sugar.treatBelow },
    "glucose over": { target: sugar.hold.high },
    "icp over": { target: at(of.icpTreatAboveMmHg) },
  };
}

export type Limits = {
  readonly rules: readonly Rule[];
  /** A systolic alone this far from that of the last mean shows that the mean no longer holds. */
  readonly apartMmHg: number;
  /** The lowest ICP assumed while none was measured. */
  readonly lowestIcpMmHg: number;
};

/** What a protocol watches, and its numbers for any patient. A limit that a patient does not have gives no band. */
export function readLimits(protocol: unknown): Limits {
  const file = bare(protocol) as File;
  const rules = file.alerts.map(({ id, code, side = "under", phases, bands }): Rule => {
    const bandsFor = (known: Known): readonly Band[] => {
      const numbers = numbersOf(file, known)[`${code} ${side}`];
      // Without its target the patient has no such limit now: a ceiling that is suspended, a cause that has none.
      if (numbers?.target === undefined && bands.some(({ at, under }) => (at ?? under) === "target")) return [];
      return bands.flatMap(({ at, under, inclusive, priority }) => {
        const place = at ?? under;
        const limit = typeof place === "number" ? place : numbers?.[place as keyof Numbers];
        return limit === undefined ? [] : [{ limit, inclusive, severity: priority }];
      });
    };
    return { id, code, side, phases, bands: bandsFor };
  });
  return { rules, apartMmHg: file.pressures.apartMmHg, lowestIcpMmHg: file.assumedIcpMmHg.low };
}

/** The band that a value lies in, the worst of several. */
export function severityOf(bands: readonly Band[], side: Side, value: number): Severity | undefined {
  const isBeyond = (limit: number): boolean => (side === "under" ? value < limit : value > limit);
  return bands.findLast(({ limit, inclusive }) => isBeyond(limit) || (inclusive && value === limit))?.severity;
}
