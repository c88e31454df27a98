import type { Fact } from "../../../src/log/facts.ts";
import { createRandom } from "../../bench/random.ts";

/** A turn of the script: the launch of the browser that spoke it, counted over one profile, and its number in that launch. */
export type TurnName = { readonly launch: number; readonly turn: number };

const START_MS = 1_800_000_000_000;
const MOST_FACTS = 6;
const LAUNCHES_A_CASE = 3;

/** Whether a launch opens a case whatever it finds; the others go on with the one that they find. */
export const opensCase = (launch: number): boolean => launch % LAUNCHES_A_CASE === 0;

export const idOf = ({ launch, turn }: TurnName): string => `${launch}.${turn}`;

/** The turn that a fact says it belongs to; undefined where its id is none that this script gives. */
export function turnOf({ id }: Pick<Fact, "id">): TurnName | undefined {
  const parts = /^(\d+)\.(\d+)-\d+$/u.exec(id);
  return parts === null ? undefined : { launch: Number(parts[1]), turn: Number(parts[2]) };
}

/**
 * The facts of a turn, one to six, the same ones whenever they are asked for: so whoever finds them in the store can say
 * whether they are what was given to it. Invented.
 *
 * @param opens the first of them opens a case.
 */
export function factsOf({ launch, turn }: TurnName, opens: boolean): readonly Fact[] {
  const random = createRandom(launch * 7_919 + turn);
  random.next();
  const count = 1 + random.below(MOST_FACTS);
  const name = idOf({ launch, turn });
  return Array.from({ length: count }, (_, part): Fact => {
    const stamp = { v: 2, id: `${name}-${part}`, atMs: START_MS + launch * 1_000_000 + turn * 1_000 } as const;
    if (opens && part === 0)
      return {
        ...stamp,
        type: "case.opened",
        caseId: `case-${launch}`,
        label: "kilo four seven",
        rehearsal: false,
        protocol: { name: "invented", version: "1" },
      };
    const value = 30 + random.below(200);
    const words = `heart rate ${value}`;
    return {
      ...stamp,
      type: "vital.recorded",
      readingId: `reading-${name}`,
      heard: words,
      by: "typed",
      code: "hr",
      value,
      unit: "/min",
      said: { value, unit: "/min", words },
    };
  });
}
