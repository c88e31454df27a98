import { grammarState, type AppContext, type AppState } from "../../../src/app/context.ts";
import { interpret, type Interpretation } from "../../../src/app/interpret.ts";
import type { Utterance } from "../../../src/app/ports.ts";
import { understand } from "../../../src/language/understand/understand.ts";
import { meaningKey } from "../../../src/language/understand/meaningKey.ts";
import type { Outcome } from "../judge.ts";
import type { Random } from "../random.ts";
import type { Counts } from "./measured.ts";

/** Words that the listener took for each other in the measured runs, and the pairs known to sound alike. */
const CONFUSED: readonly (readonly [string, string])[] = [
  ["six", "eight"],
  ["five", "nine"],
  ["one", "nine"],
  ["sixty", "fifty"],
  ["ninety", "eighty"],
  ["thirteen", "thirty"],
  ["fourteen", "forty"],
  ["fifteen", "fifty"],
  ["sixteen", "sixty"],
  ["seventeen", "seventy"],
  ["eighteen", "eighty"],
  ["nineteen", "ninety"],
];
const SWAPS = new Map(CONFUSED.flatMap(([a, b]) => [[a, b] as const, [b, a] as const]));

const PHONES = 20;
/** Fit to the language and distance of the rival, from clear to hopeless: the first that leads to the wanted verdict is used. */
const FITS = [0, -0.1, -0.2, -0.3, -0.4, -0.5, -0.6, -0.8, -1, -1.5, -3];
const DISTANCES = [40, 20, 12, 8, 5, 3, 2, 1, 0.5, 0.1];

function sound(words: string, fit: number, rival: readonly [string, number] | undefined, endedAtMs: number): Utterance {
  const near = rival === undefined ? [] : [{ words: rival[0], score: -rival[1] }];
  return {
    by: "listener",
    candidates: [{ words, score: 0 }, ...near],
    free: { score: -fit * PHONES, phones: PHONES },
    endedAtMs,
  };
}

/** The app's ears: says what would reach the app of words that were said, as often as was measured. */
export class Ears {
  readonly #context: AppContext;
  readonly #random: Random;
  /** Sounds found before, by what they were to lead to: finding one takes many readings of the same words. */
  readonly #found = new Map<string, readonly [fit: number, distance: number | undefined]>();

  constructor(context: AppContext, random: Random) {
    this.#context = context;
    this.#random = random;
  }

  /** @returns the utterance, and whether anything was heard at all. */
  hear(state: AppState, words: string, counts: Counts, besideAnother: number, nowMs: number): Utterance {
    const outcome = this.#draw(counts);
    const other = this.#mistaken(state, words);
    switch (outcome) {
      case "right":
        return sound(words, 0, undefined, nowMs);
      case "wrong":
        return sound(other ?? words, 0, undefined, nowMs);
      case "askedRight": {
        const rival = this.#random.next() < besideAnother ? other : undefined;
        return this.#leadingTo("unsure", state, words, rival, nowMs);
      }
      case "askedWrong":
        return this.#leadingTo("unsure", state, other ?? words, undefined, nowMs);
      case "refused":
        return this.#leadingTo("unclear", state, words, other, nowMs);
      case "silent":
        return this.#leadingTo("outside", state, words, undefined, nowMs);
    }
  }

  #draw(counts: Counts): Outcome {
    const entries = Object.entries(counts) as [Outcome, number][];
    let left = this.#random.next() * entries.reduce((sum, [, n]) => sum + n, 0);
    for (const [outcome, n] of entries) {
      left -= n;
      if (left < 0) return outcome;
    }
    return "right";
  }

  /** The same words with one of them taken for another, where that has another meaning of its own. */
  #mistaken(state: AppState, words: string): string | undefined {
    if (words === "negative") return "affirm";
    const grammar = this.#context.grammars.of(grammarState(this.#context.protocol, state.log));
    const keysOf = (said: string) => {
      const meaning = understand(grammar, said.split(" "));
      return meaning.kind === "one" ? meaningKey(meaning.intent) : undefined;
    };
    const list = words.split(" ");
    const all = list.flatMap((word, i) => {
      const swapped = SWAPS.get(word);
      return swapped === undefined ? [] : [list.with(i, swapped).join(" ")];
    });
    const others = all.filter((said) => ![undefined, keysOf(words)].includes(keysOf(said)));
    return others.length === 0 ? undefined : this.#random.pick(others);
  }

  /** Sound that the app's own rule makes this of, whatever its thresholds are. */
  #leadingTo(
    kind: Interpretation["kind"],
    state: AppState,
    words: string,
    rival: string | undefined,
    nowMs: number,
  ): Utterance {
    const inState = grammarState(this.#context.protocol, state.log);
    const make = ([fit, distance]: readonly [number, number | undefined]): Utterance =>
      sound(words, fit, rival === undefined || distance === undefined ? undefined : [rival, distance], nowMs);
    const key = [kind, inState, words, rival].join("|");
    const isWanted = (margins: readonly [number, number | undefined]): boolean =>
      interpret(this.#context.grammars, inState, make(margins)).kind === kind;
    const distances = rival === undefined ? [undefined] : DISTANCES;
    // Where the rule has no such verdict for these words (affirm is never asked back), nothing is heard.
    const margins =
      this.#found.get(key) ??
      FITS.flatMap((fit) => distances.map((distance) => [fit, distance] as const)).find(isWanted) ??
      ([FITS.at(-1) ?? 0, undefined] as const);
    this.#found.set(key, margins);
    return make(margins);
  }
}
