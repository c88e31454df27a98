import type { CareState } from "../careState.ts";
import { linksOf } from "../chains.ts";
import { isAfterTube } from "../phase.ts";

/** Number of the oldest link from the newest on that all hold; undefined where the newest does not. */
function oldestOfRun<C extends { readonly seq: number; readonly earlier: C | undefined }>(
  chain: C | undefined,
  holds: (link: C) => boolean,
): number | undefined {
  let seq: number | undefined;
  for (const link of linksOf(chain)) {
    if (!holds(link)) break;
    seq = link.seq;
  }
  return seq;
}

/**
 * Number of the fact with which the tube that is in went in: as called out, or else the phase that was said. Undefined
 * while none is in.
 */
export function tubeSinceSeq(care: CareState): number | undefined {
  const calledOut = oldestOfRun(care.airway, ({ event }) => event === "tubeIn" || event === "tubeConfirmed");
  return calledOut ?? oldestOfRun(care.phases, (entry) => isAfterTube({ care: { ...care, phases: entry } }));
}
