import type { Dose, Drug, DrugClass, Infusion, Protocol } from "./protocol.ts";

/** A drug or an osmotic agent: whatever a dose can be asked for. */
export type Medicine = {
  readonly id: string;
  /** As the protocol's region writes it, and as it is said. */
  readonly name: string;
  readonly spokenName: string;
  readonly drugClass: DrugClass;
  /** Where it stands in the protocol file. */
  readonly path: string;
  /** On sale where the protocol is used. */
  readonly inRegion: boolean;
  /** The protocol permits it before hospital. */
  readonly beforeHospital: boolean;
  /** The protocol permits it while the systolic is under its target. */
  readonly underSbpTarget: boolean;
  readonly doses: readonly Dose[];
  readonly infusions: readonly Infusion[];
  readonly cautions: Drug["cautions"];
};

/** The one drug that has a permission of its own. */
const TRANEXAMIC_ACID = "tranexamic acid";

function asMedicine({ region, permissions }: Protocol, drug: Drug, index: number): Medicine {
  const { id, names, regions, doses, infusions, cautions } = drug;
  return {
    id,
    name: names[region.drugNames],
    spokenName: names[region.drugNames],
    drugClass: drug.class,
    path: `drugs[${index}]`,
    inRegion: regions?.value.includes(region.drugNames) ?? true,
    beforeHospital: id !== TRANEXAMIC_ACID || permissions.tranexamicAcidPrehospital.value,
    underSbpTarget: true,
    doses,
    infusions,
    cautions,
  };
}

/** The drug or osmotic agent with this id; `undefined` when this protocol has none. */
export function findMedicine(protocol: Protocol, id: string): Medicine | undefined {
  const { drugs, osmotics, permissions } = protocol;
  const drug = drugs.find((d) => d.id === id);
  if (drug !== undefined) return asMedicine(protocol, drug, drugs.indexOf(drug));
  const osmotic = osmotics.find((o) => o.id === id);
  if (osmotic === undefined) return undefined;
  const { label: name, spoken, solute, doses, infusions, cautions } = osmotic;
  return {
    id,
    name,
    spokenName: spoken[0] ?? name,
    drugClass: "osmotic",
    path: `osmotics[${osmotics.indexOf(osmotic)}]`,
    inRegion: true,
    beforeHospital: permissions.osmotherapyPrehospital.value,
    underSbpTarget: solute !== "mannitol" || permissions.mannitolBelowSbpTarget.value,
    doses,
    infusions,
    cautions,
  };
}
