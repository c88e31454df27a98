import { fromCanonical } from "../../core/convert.ts";
import type { CurrentTargets } from "../../log/targets.ts";
import { sayNumber, showNumber } from "./number.ts";
import type { UsualUnits } from "./recordedValue.ts";
import { CAUSES } from "./statement.ts";
import { saidUnitWords, showUnit } from "./vital.ts";

const sayWhole = (n: number): string => sayNumber(Math.round(n), 0);
const showWhole = (n: number): string => showNumber(Math.round(n), 0);

type Range = { readonly low: number; readonly high: number };

/** An end-tidal range with its ends in the usual unit. */
function inUsual({ low, high }: Range, { co2 }: UsualUnits) {
  const ends = [low, high].map((mmHg) => fromCanonical("etco2", mmHg, co2));
  const decimals = co2 === "kPa" ? (1 as const) : (0 as const);
  return { ends: ends.flatMap((end) => (end.ok ? [end.value] : [])), decimals, unit: co2 };
}

/** "thirty five to forty five", in the usual unit. Ends in mmHg. */
export function sayEndTidalRange(range: Range, usual: UsualUnits): string {
  const { ends, decimals, unit } = inUsual(range, usual);
  const words = ends.map((end) => sayNumber(end, decimals)).join(" to ");
  return `${words}${unit === "kPa" ? ` ${saidUnitWords(unit)}` : ""}`;
}

/** "end tidal thirty five to forty five", in the usual unit. Ends in mmHg. */
export const sayEndTidal = (range: Range, usual: UsualUnits): string => `end tidal ${sayEndTidalRange(range, usual)}`;

function saySystolic({ sbpMmHg, suspended }: CurrentTargets): string {
  const { target, ceiling } = sbpMmHg;
  if (ceiling !== undefined) return `systolic ${sayWhole(target.value)} to ${sayWhole(ceiling.value)}`;
  return `systolic ${sayWhole(target.value)}${suspended.length > 0 ? ", no ceiling" : ""}`;
}

const sayEach = (targets: CurrentTargets, usual: UsualUnits): readonly string[] => [
  saySystolic(targets),
  `MAP ${sayWhole(targets.mapMmHg.target.value)}`,
  `CPP ${sayWhole(targets.cppMmHg.target.value)}`,
  sayEndTidal(targets.etco2MmHg, usual),
];

/** The targets that are no longer what they were: "targets: systolic one oh two, MAP sixty five". Nothing where none changed. */
export function sayChangedTargets(
  before: CurrentTargets,
  after: CurrentTargets,
  usual: UsualUnits,
): string | undefined {
  const old = sayEach(before, usual);
  const changed = sayEach(after, usual).filter((words, i) => words !== old[i]);
  if (changed.length === 0) return undefined;
  return `${changed.length === 1 ? "target" : "targets"}: ${changed.join(", ")}`;
}

function showWhose({ population, ageKnown, cause }: CurrentTargets): string {
  const whose = ageKnown
    ? `Targets: ${population.label}`
    : `${population.kind === "adult" ? "Adult" : "Child"} targets until an age is recorded`;
  return `${whose}, cause ${CAUSES[cause]}`;
}

/** "EtCO2 35 to 45 mmHg", in the usual unit. Ends in mmHg. */
export function showEndTidal(range: Range, usual: UsualUnits): string {
  const { ends, decimals, unit } = inUsual(range, usual);
  return `EtCO2 ${ends.map((end) => showNumber(end, decimals)).join(" to ")} ${showUnit(unit)}`;
}

/** The targets in force, for the screen: whose they are, the numbers, then every ceiling with whether it counts. */
export function showTargets(targets: CurrentTargets, usual: UsualUnits): readonly string[] {
  const { sbpMmHg, mapMmHg, cppMmHg, spo2Pct, etco2MmHg, suspended } = targets;
  const pressures = [["SBP", sbpMmHg] as const, ["MAP", mapMmHg] as const, ["CPP", cppMmHg] as const];
  return [
    showWhose(targets),
    `${pressures.map(([name, { target }]) => `${name} ${showWhole(target.value)}`).join(", ")} mmHg`,
    `SpO2 ${showWhole(spo2Pct.target.value)} %, ${showEndTidal(etco2MmHg, usual)}`,
    ...(sbpMmHg.ceiling === undefined ? [] : [`SBP ceiling ${showWhole(sbpMmHg.ceiling.value)} mmHg`]),
    ...suspended.map(({ limit, why }) => `SBP ceiling ${showWhole(limit.value)} suspended: ${why}`),
  ];
}
