import { VITALS } from "../../core/vitals.ts";
import { when, within, type Faults } from "../fault.ts";
import type { Population, Protocol } from "../protocol.ts";
import { endsOf, valueAt } from "./ages.ts";

type Herniation = Protocol["targets"]["herniation"];

/** The highest mean pressure that herniation asks for in one population: its CPP target plus the assumed ICP. */
const highestMeanInHerniation = (population: Population, { assumedIcpMmHg }: Herniation): number =>
  Math.max(...endsOf(population).map((ageA) => valueAt(population.cppMmHg.target.value, ageA))) + assumedIcpMmHg.value;

/** The lowest ceiling that still counts in herniation; none where ceilings are spared. */
function lowestCeiling({ causes, herniationSparesPressure }: Protocol["targets"]): number {
  const ceilings = causes.flatMap((cause) => cause.sbpRangeMmHg?.value.high ?? []);
  return herniationSparesPressure.value ? Infinity : Math.min(Infinity, ...ceilings);
}

/** Floors of herniation that can be believed, reached, and met together with what else counts then. */
export function checkHerniation({ targets }: Protocol): Faults {
  const { populations, herniation } = targets;
  const icpAt = ["targets", "herniation", "assumedIcpMmHg", "value"];
  const sbpAt = ["targets", "herniation", "sbpMmHg", "value"];
  const highest = Math.max(...populations.map((population) => highestMeanInHerniation(population, herniation)));
  const ceiling = lowestCeiling(targets);
  const sbp = herniation.sbpMmHg.value;
  const { max } = VITALS.map.limits;
  return [
    ...within(VITALS.icp.limits, herniation.assumedIcpMmHg.value, icpAt),
    ...when(highest > max, icpAt, `asks for a mean pressure of ${highest}, and ${max} is the highest that is believed`),
    ...within(VITALS.sbp.limits, sbp, sbpAt),
    ...when(
      sbp >= ceiling,
      sbpAt,
      `${sbp} is not under the ceiling of ${ceiling}, which herniation does not lift here: no pressure would meet both`,
    ),
  ];
}
