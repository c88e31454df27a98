import fc from "fast-check";
import { readGrammarSources } from "../../src/cli/readGrammars.ts";
import { FAMILIES } from "../bench/hearing/families.ts";
import { createGrammarWalk } from "../bench/hearing/walkGrammar.ts";
import { createRandom } from "../bench/random.ts";

/** What may happen to a case in which a list is read: something is said, or time passes. */
export type Move =
  { readonly kind: "say"; readonly words: string } | { readonly kind: "wait"; readonly seconds: number };

const said = (...words: readonly string[]): fc.Arbitrary<string> => fc.constantFrom(...words);

const lists = said("read the list", "read the list", "killer items", "pause the list", "what's left", "failed airway");
const bare = said(
  "done",
  "done",
  "done",
  "later",
  "not needed",
  "not needed no time",
  "next",
  "waive",
  "waive no time",
);
const named = said(
  "bleeding stopped",
  "suction ready",
  "suction later",
  "tube ready",
  "tube eight point zero",
  "capno on",
  "push dose drawn up",
  "plan agreed",
  "second medic calls pressure",
  "stop saturation ninety",
  "oxygen ready",
  "neuro exam not needed",
  "pressor trigger one fifteen",
);
const vitals = said(
  "map ninety five",
  "map seventy",
  "one twenty over eighty",
  "sats eighty five",
  "sats ninety six",
  "eyes four motor six",
  "both pupils three brisk",
  "icp fifteen",
  "end tidal thirty eight",
);
const repairs = said("correction nine five", "correction seven", "disregard", "disregard", "affirm", "negative");
const numbers = said("eight", "fifteen", "one five", "ninety", "two", "seven point five");
const course = said("status", "stand by", "say again", "the weather is nice", "no idea");

/** Any order of steps, with vitals, corrections, disregards, waivers and questions between them. */
export const moves: fc.Arbitrary<readonly Move[]> = fc.array(
  fc.oneof(
    {
      weight: 9,
      arbitrary: fc
        .oneof(
          { weight: 3, arbitrary: lists },
          { weight: 8, arbitrary: bare },
          { weight: 5, arbitrary: named },
          { weight: 4, arbitrary: vitals },
          { weight: 3, arbitrary: repairs },
          { weight: 3, arbitrary: numbers },
          { weight: 1, arbitrary: course },
        )
        .map((words): Move => ({ kind: "say", words })),
    },
    {
      weight: 1,
      arbitrary: fc.constantFrom(1, 20, 31, 61, 200, 700).map((seconds): Move => ({ kind: "wait", seconds })),
    },
  ),
  { minLength: 1, maxLength: 40, size: "max" },
);

const walk = createGrammarWalk(readGrammarSources(), "case");
const starts = FAMILIES.flatMap((family) => family.starts);
/** Any path through any part of the language. */
const anything = fc
  .record({ start: fc.constantFrom(...starts), seed: fc.nat() })
  .map(({ start, seed }): Move => ({ kind: "say", words: walk.words(start.file, start.rule, createRandom(seed)) }));
const affirm = fc.constant<Move>({ kind: "say", words: "affirm" });

/** Whatever can be said, often affirmed, with time that passes between. */
export const anyMoves: fc.Arbitrary<readonly Move[]> = fc.array(
  fc.oneof(
    { weight: 4, arbitrary: anything },
    { weight: 2, arbitrary: affirm },
    { weight: 1, arbitrary: fc.constantFrom(1, 31, 200).map((seconds): Move => ({ kind: "wait", seconds })) },
  ),
  { minLength: 1, maxLength: 40, size: "max" },
);
