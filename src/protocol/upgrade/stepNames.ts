import { asHeard, wordCount } from "../checks/asHeard.ts";
import { MOST_NAME_WORDS } from "../checks/steps.ts";

type Nameable = { readonly id: string; readonly name?: string; readonly challenge: string };

/** The challenge without what would not be said in a name: its question mark, and any other mark at the end. */
const bare = (words: string): string => words.trim().replace(/[^\p{L}\p{N}]+$/u, "");

/** The challenge where it is short enough to be a name, else as much of its beginning as a name may have. */
function fromChallenge({ challenge }: Nameable): string {
  const whole = bare(challenge);
  return wordCount(whole) <= MOST_NAME_WORDS ? whole : bare(whole.split(/\s+/u).slice(0, MOST_NAME_WORDS).join(" "));
}

/** "step 3": for a step whose beginning is nobody's own. */
function freeNumber(taken: ReadonlySet<string>): string {
  let number = 1;
  while (taken.has(`step ${number}`)) number += 1;
  return `step ${number}`;
}

/**
 * A name for each step that has none. No two are alike, and none is longer than a name may be: a file that was valid
 * must not be refused for names that it never gave.
 *
 * @param steps    all steps of the file, in its order.
 * @param known    the name that a step of this id has in the example.
 * @param reserved names that stand elsewhere already.
 * @returns        the name of each step by its id.
 */
export function nameSteps(
  steps: readonly Nameable[],
  known: (id: string) => string | undefined,
  reserved: readonly string[],
): ReadonlyMap<string, string> {
  const names = new Map<string, string>();
  const taken = new Set(reserved.map(asHeard));
  const give = (id: string, name: string): void => {
    names.set(id, name);
    taken.add(asHeard(name));
  };
  // First those whose names are settled: what is made up must keep clear of them.
  for (const { id, name = known(id) } of steps) if (name !== undefined && !taken.has(asHeard(name))) give(id, name);
  for (const step of steps) {
    if (names.has(step.id)) continue;
    const name = fromChallenge(step);
    give(step.id, name === "" || taken.has(asHeard(name)) ? freeNumber(taken) : name);
  }
  return names;
}
