import type { ListId } from "../../log/steps/lists.ts";
import { sayNumber } from "./number.ts";
import { sentences } from "./sentence.ts";

/** More names than these are not kept in mind. */
const MOST_NAMES = 8;

const COMPLETE: Readonly<Record<ListId, readonly string[]>> = {
  prepare: ["Preparation complete"],
  afterTube: ["After the tube complete", "Watch begins"],
  rescue: ["Rescue list complete"],
  failedAirway: ["Failed airway list complete"],
};

/** The heading of a list on the screen. */
export const LIST_TITLES: Readonly<Record<ListId, string>> = {
  prepare: "Preparation",
  afterTube: "After the tube",
  rescue: "Rescue",
  failedAirway: "Failed airway",
};

export const sayComplete = (list: ListId): string => sentences(...COMPLETE[list]);
export const KILLERS_COMPLETE = "Killer items complete.";
export const LIST_PAUSED = "List paused.";
export const LIST_NOT_READ = "The list is not being read.";
export const NO_STEP_OPEN = "No step is open. Say next.";
export const UNKNOWN_STEP = "That step is not in this protocol.";
export const UNKNOWN_GROUP = "That part is not in this protocol.";
export const FAILED_AIRWAY = "Failed airway.";

/** At most eight names, then how many more there are. */
function sayNames(names: readonly string[]): string {
  const more = names.length - MOST_NAMES;
  const said = names.slice(0, MOST_NAMES).join(", ");
  return more > 0 ? `${said}, and ${sayNumber(more, 0)} more` : said;
}

/** What is open, the count first: "Three left: push dose, suction, tube." */
export const sayLeft = (names: readonly string[], group: string | undefined): string => {
  const where = group === undefined ? "" : ` in ${group.toLowerCase()}`;
  return sentences(
    names.length === 0 ? `Nothing left${where}` : `${sayNumber(names.length, 0)} left${where}: ${sayNames(names)}`,
  );
};

/** The list was interrupted: the step that still waits is named. */
export const sayBackTo = (name: string): string => sentences(`Back to ${name}`);

/** The reading ends and these were put off. */
export const sayPutOff = (names: readonly string[]): string => sentences(`Put off: ${sayNames(names)}`);

/** The one warning before the drugs go in: what is neither done nor waived. */
export const sayKillerWarning = (names: readonly string[]): string =>
  sentences(`Critical, not done: ${names.join(", ")}`);

export const sayWaived = (names: readonly string[], reason: string | undefined): string =>
  sentences(`Waived${reason === undefined ? "" : `, ${reason}`}: ${names.join(", ")}`);
