import { OLDEST_EXACT_A } from "../core/age.ts";
import { VITALS } from "../core/vitals.ts";
import type { Intent, SaidVital } from "../language/intent.ts";
import type { SaidNumber } from "../language/saidNumber.ts";
import type { CaseState } from "../log/caseState.ts";
import type { Interpretation } from "./interpret.ts";

const OVER = { value: OLDEST_EXACT_A + 1, words: `over ${OLDEST_EXACT_A}` };

/** Over any age that is possible it is a slip, and must be asked about as it was said. */
const isTooExact = (number: SaidNumber): boolean =>
  number.value > OLDEST_EXACT_A && number.value <= VITALS.age.limits.max;

const isAge = (item: { readonly kind: string; readonly code?: string; readonly unit?: string }): item is SaidVital =>
  item.kind === "vital" && item.code === "age" && item.unit !== "mo";

/** The number itself stays in doubt where it sounds like another ("ninety"): only its words tell, so these are kept. */
const rounded = <T extends SaidNumber>(number: T): T =>
  isTooExact(number) && number.value !== OVER.value ? { ...number, ...OVER } : number;

function roundedIntent(intent: Intent, isOfAge: boolean): Intent {
  if (intent.kind === "number" && isOfAge && intent.unit === undefined)
    return { ...intent, number: rounded(intent.number) };
  if (intent.kind === "strike" && intent.of === "age") {
    const { was, becomes } = intent;
    return { ...intent, ...(was && { was: rounded(was) }), ...(becomes && { becomes: rounded(becomes) }) };
  }
  if (intent.kind !== "vitals") return intent;
  return { ...intent, items: intent.items.map((item) => (isAge(item) ? rounded(item) : item)) };
}

/** The ages that are said in it. */
function agesIn(intent: Intent, isOfAge: boolean): readonly SaidNumber[] {
  if (intent.kind === "number") return isOfAge ? [intent.number] : [];
  if (intent.kind === "strike" && intent.of === "age")
    return [intent.was, intent.becomes].flatMap((number) => number ?? []);
  return intent.kind === "vitals" ? intent.items.filter(isAge) : [];
}

/**
 * What was heard, with an age over 89 as no more than that: exact ages of the very old can tell who somebody is, and nothing
 * here depends on them. The words are changed too, since the record keeps them.
 */
export function withoutExactAge(heard: Interpretation, { questions, lastReading }: CaseState): Interpretation {
  if (heard.kind === "outside" || heard.kind === "unclear") return heard;
  const about = questions[0]?.about ?? lastReading?.facts.flatMap((f) => (f.type === "vital.recorded" ? [f.code] : []));
  const isOfAge = about?.[0] === "age";
  const intents = heard.kind === "meant" ? [heard.intent] : heard.intents;
  const said = intents.flatMap((intent) => agesIn(intent, isOfAge));
  const words = said.filter(isTooExact).reduce((all, number) => all.replace(number.words, OVER.words), heard.words);
  return heard.kind === "meant"
    ? { ...heard, words, intent: roundedIntent(heard.intent, isOfAge) }
    : { ...heard, words, intents: heard.intents.map((intent) => roundedIntent(intent, isOfAge)) };
}
