import type { OsmoticEquivalents } from "../../rules/osmoticEquivalents.ts";
import { sayMlOnce } from "./amount.ts";
import { roundedDose } from "./number.ts";
import { sentences } from "./sentence.ts";

export const NO_OSMOTIC = "That is no osmotic agent of this protocol.";

/** "Mannitol two hundred millilitres. The same load in …". The dose of each has to be asked for by its name. */
export function sayEquivalents(name: string, { ofMl, others }: OsmoticEquivalents): string {
  const each = others.map(({ osmotic, volumeMl }) => {
    return `${osmotic.spoken[0] ?? osmotic.label} ${sayMlOnce(roundedDose(volumeMl))}`;
  });
  return sentences(`${name} ${sayMlOnce(roundedDose(ofMl))}`, `The same load in ${each.join(", ")}`, "Not doses");
}
