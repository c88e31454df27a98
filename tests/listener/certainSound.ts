import { certaintyOf, verdictOf, type StatementKind, type Verdict } from "../../src/listener/certainty.ts";

/** The margins of a sound in a quiet room, of so many phones. */
export type Margins = { readonly m1: number; readonly m2: number };

const STEPS = 60;

/**
 * The worst margin along a way from bad to good at which a verdict still holds. Found by halving, so that tests about what
 * follows from a verdict stand whatever the fitted numbers are.
 */
function edge(verdict: Verdict, kind: StatementKind, phones: number, at: (share: number) => Margins): number {
  let bad = 0;
  let good = 1;
  const reaches = (share: number): boolean => {
    const reached = verdictOf(certaintyOf({ ...at(share), phones }), kind);
    return reached === "take" || reached === verdict;
  };
  if (!reaches(good)) throw new Error(`even the best margin is not enough to ${verdict} a ${kind}`);
  for (let i = 0; i < STEPS; i++) {
    const middle = (bad + good) / 2;
    if (reaches(middle)) good = middle;
    else bad = middle;
  }
  return good;
}

const FARTHEST = 30;
const WORST_FIT = -2;

/** The least m2 at which words that fit perfectly are taken, or asked back. */
export const leastM2 = (verdict: "take" | "ask", kind: StatementKind, phones: number): number =>
  FARTHEST * edge(verdict, kind, phones, (share) => ({ m1: 0, m2: share * FARTHEST }));

/** The least m1 at which words that nothing comes near are taken, or asked back. */
export const leastM1 = (verdict: "take" | "ask", kind: StatementKind, phones: number): number =>
  WORST_FIT * (1 - edge(verdict, kind, phones, (share) => ({ m1: WORST_FIT * (1 - share), m2: Infinity })));
