import { compileGrammar } from "../../../src/language/jsgf/compileGrammar.ts";
import type { CompiledGrammar } from "../../../src/language/jsgf/compiledGrammar.ts";
import { matchWords } from "../../../src/language/jsgf/matchWords.ts";
import { normalise } from "../../../src/language/normalise/normalise.ts";
import { wordsToNumber } from "../../../src/language/numbers/wordsToNumber.ts";
import { meaningKey } from "../../../src/language/understand/meaningKey.ts";
import { understand } from "../../../src/language/understand/understand.ts";
import { createGrammarSearch } from "../../../src/adapters/speech/grammarSearch.ts";
import { readDictionary, readGrammarSources } from "../../../src/cli/readGrammars.ts";
import { parseDictionary, type Dictionary } from "../../../src/listener/dictionary.ts";
import type { Search } from "../../../src/listener/search.ts";
import type { Lab } from "../lab.ts";
import type { Random } from "../random.ts";

/** Amounts of drugs as they are said when given: a language of this study, wider than what a case admits. */
const AMOUNTS = `#JSGF V1.0;
grammar amounts;
import <numbers.*>;
import <drugs.drug>;
public <given> = <drug> <amount> {amount} <unit>;
<amount> = <nGlucoseMgdl> | <nWeight>;
<mass> = milligrams {u=mg} | micrograms {u=ug} | grams {u=g};
<unit> = <mass> | <mass> per kilo {u=/kg} | <mass> per minute {u=/min} | <mass> per kilo per minute {u=/kg/min}
       | <mass> per millilitre {u=/mL} | millilitres {u=mL} | units {u=U};
`;
const AMOUNT_WORDS = `
grams G R AE M Z
kilo K IY L OW
micrograms M AY K R OW G R AE M Z
millilitre M IH L IH L IY T ER
millilitres M IH L IH L IY T ER Z
units Y UW N AH T S
`;

/** A grammar to listen with, and what its words mean: equal texts for equal meanings, nothing for none or several. */
export type Tongue = {
  readonly search: Search;
  readonly dictionary: Dictionary;
  meaningOf(words: string): string | undefined;
};

export type TongueName = "amounts" | "open" | "numbers";

function amountMeaning(grammar: CompiledGrammar, words: string): string | undefined {
  const { parses } = matchWords(grammar, words.split(" "));
  const keys = parses.map((marks) =>
    marks
      .filter(({ tag }) => /^(drug|u)=|^amount$/.test(tag))
      .map(({ tag, words: of }) => (tag === "amount" ? valueText(of) : tag))
      .join("|"),
  );
  return new Set(keys).size === 1 ? keys[0] : undefined;
}

const valueText = (words: readonly string[]): string => {
  const value = wordsToNumber(words);
  return value.ok ? String(value.value) : "?";
};

export function loadTongues(lab: Lab): Readonly<Record<TongueName, Tongue>> {
  const sources = { ...readGrammarSources(), amounts: AMOUNTS };
  const entry = { grammar: "amounts", rule: "given" };
  const grammar = compileGrammar(sources, entry);
  const dictionary = parseDictionary(readDictionary() + AMOUNT_WORDS);
  if (!grammar.ok || !dictionary.ok) throw new Error(JSON.stringify([grammar, dictionary]));
  const search = createGrammarSearch(sources, entry, dictionary.value);
  if (!search.ok) throw new Error(search.error.message);
  return {
    amounts: {
      search: search.value,
      dictionary: dictionary.value,
      meaningOf: (words) => amountMeaning(grammar.value, words),
    },
    open: {
      search: lab.searches.open,
      dictionary: dictionary.value,
      meaningOf(words) {
        const meaning = understand(lab.context.grammars.of("open"), normalise(words));
        return meaning.kind === "one" ? meaningKey(meaning.intent) : undefined;
      },
    },
    numbers: {
      search: lab.searches.numbers,
      dictionary: dictionary.value,
      meaningOf(words) {
        const value = wordsToNumber(words.split(" "));
        return value.ok ? String(value.value) : undefined;
      },
    },
  };
}

export type Saying = { readonly kind: string; readonly tongue: TongueName; readonly words: string };

const TENS = ["ten", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"];
const TEENS = ["thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen"];
const ONES = ["one", "two", "three", "four", "five", "six", "seven", "eight", "nine"];
const DRUGS = (
  "ketamine,etomidate,propofol,fentanyl,lidocaine,lignocaine,rocuronium,roc,suxamethonium,succinylcholine,sux," +
  "sugammadex,atropine,noradrenaline,norepinephrine,norad,adrenaline,epinephrine,phenylephrine,vasopressin,ephedrine," +
  "midazolam,levetiracetam,tranexamic acid,phytomenadione,vitamin k,prothrombin complex,protamine,calcium chloride," +
  "calcium gluconate,mannitol,three percent saline"
).split(",");
const AMOUNT_UNITS = (
  "milligrams,milligrams,micrograms,micrograms,grams,units,millilitres,milligrams per kilo,micrograms per minute," +
  "micrograms per kilo per minute,micrograms per millilitre,milligrams per millilitre"
).split(",");

/** So many statements in which a slip would matter, each with one meaning in its language. */
export function sayings(
  tongues: Readonly<Record<TongueName, Tongue>>,
  count: number,
  random: Random,
): readonly Saying[] {
  const { pick } = random;
  const teenOrTy = (): string => pick([...TEENS, ...TENS]);
  const tens = (): string => pick([pick(TENS), `${pick(TENS.slice(1))} ${pick(ONES)}`, teenOrTy()]);
  const amount = (): string =>
    pick([
      tens,
      tens,
      () => `${pick(ONES)} hundred`,
      () => `one hundred and ${tens()}`,
      () => `one ${tens()}`,
      () => `two ${tens()}`,
      () => `${pick(["zero", ...ONES])} point ${pick(ONES)}`,
      () => pick(ONES),
    ])();
  const makers: readonly (readonly [kind: string, tongue: TongueName, make: () => string])[] = [
    ["drug and amount", "amounts", () => `${pick(DRUGS)} ${amount()} ${pick(AMOUNT_UNITS)}`],
    ["drug and amount", "amounts", () => `${pick(DRUGS)} ${amount()} ${pick(AMOUNT_UNITS)}`],
    ["drug name", "open", () => `dose of ${pick(DRUGS)}`],
    [
      "weight or age",
      "open",
      () =>
        pick([
          () => `weight ${pick([tens(), `one ${tens()}`, `one hundred and ${tens()}`])} kilos`,
          () => `weight ${tens()}`,
          () => `age ${tens()}`,
          () => `${tens()} years old`,
          () => `${pick([...TEENS, "twelve", "eight"])} months old`,
        ])(),
    ],
    [
      "teen or ty",
      "open",
      () =>
        pick([
          () => `map ${teenOrTy()}`,
          () => `i c p ${teenOrTy()}`,
          () => `rate one ${teenOrTy()}`,
          () => `resp rate ${teenOrTy()}`,
          () => `end tidal ${teenOrTy()}`,
          () => `one ${teenOrTy()} over ${teenOrTy()}`,
        ])(),
    ],
  ];
  const made: Saying[] = [];
  for (let n = 0; made.length < count; n++) {
    const [kind, tongue, make] = makers[n % makers.length]!;
    const words = make();
    if (tongues[tongue].meaningOf(words) !== undefined) made.push({ kind, tongue, words });
  }
  return made;
}
