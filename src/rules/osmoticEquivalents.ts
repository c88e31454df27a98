import { percentConcentration } from "../core/concentration.ts";
import type { Amount } from "../core/doseAmount.ts";
import { volumeFor } from "../core/drawUp.ts";
import { equiosmolarVolume, osmolarity } from "../core/osmolar.ts";
import { ml } from "../core/quantities.ts";
import type { Osmotic, Protocol } from "../protocol/protocol.ts";

/** The volume of an agent, and of each other one of the protocol that has the same osmotic load. */
export type OsmoticEquivalents = {
  readonly ofMl: number;
  readonly others: readonly { readonly osmotic: Osmotic; readonly volumeMl: number }[];
};

function volumeOf({ percent }: Osmotic, dose: Amount): number | undefined {
  if (dose.unit === "mL") return dose.value;
  const strength = percentConcentration(percent);
  const volume = strength.ok ? volumeFor(dose, strength.value) : undefined;
  return volume?.ok ? volume.value : undefined;
}

/**
 * What else of the protocol's osmotic agents has the load of this dose.
 *
 * @param id   key of an osmotic agent.
 * @param dose of it, in millilitres or in grams.
 * @returns    volumes in mL, unrounded; `undefined` for what is no osmotic agent, or a dose that has no volume.
 *
 * Not for: a dose. The agents act differently, and each has limits of its own in the protocol.
 */
export function osmoticEquivalents(protocol: Protocol, id: string, dose: Amount): OsmoticEquivalents | undefined {
  const osmotic = protocol.osmotics.find((o) => o.id === id);
  const of = osmotic && osmolarity(osmotic);
  const ofMl = osmotic && volumeOf(osmotic, dose);
  const checked = ofMl === undefined ? undefined : ml(ofMl);
  if (ofMl === undefined || !of?.ok || !checked?.ok) return undefined;
  const others = protocol.osmotics.flatMap((other) => {
    const load = osmolarity(other);
    if (other.id === id || !load.ok) return [];
    return [{ osmotic: other, volumeMl: equiosmolarVolume(checked.value, of.value, load.value) }];
  });
  return { ofMl, others };
}
