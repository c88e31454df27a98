import { pressureOrder, withinLimits } from "../../../core/plausible.ts";
import type { VitalCode } from "../../../core/vitals.ts";
import type { SaidNumber } from "../../../language/saidNumber.ts";
import type { StrikeIntent, StruckThing } from "../../../language/strikeIntent.ts";
import { askDisregard } from "../../../language/sentences/act.ts";
import { sayQuestion } from "../../../language/sentences/question.ts";
import { sayReading } from "../../../language/sentences/reading.ts";
import {
  askCorrect,
  askStrike,
  sayCorrected,
  sayNoEntry,
  sayOtherShape,
  sayStruck,
  sayThing,
  STRUCK_ALREADY,
  type Aged,
} from "../../../language/sentences/strike.ts";
import type { CaseState, VitalEntry } from "../../../log/caseState.ts";
import { linksOf } from "../../../log/chains.ts";
import type { Act, Becomes, NewFact, StrikeAct, VitalValue } from "../../../log/facts.ts";
import { selectLatest } from "../../../log/selectors.ts";
import { valueOf } from "../../../log/statements.ts";
import { isStanding, strike } from "../../../log/strike.ts";
import type { AppContext } from "../../context.ts";
import { askQuestion } from "../askQuestion.ts";
import { answered, recorded, refused, type Decision } from "../decision.ts";
import { leavesAfter, newestEntry } from "../disregard.ts";
import type { Source } from "../recordStatement.ts";
import { withNumber } from "../saidVital.ts";
import { inCanonicalUnit } from "../units.ts";
import { findEntry, sayAsked, type Entry } from "./findEntry.ts";

const agedAt = ({ words, atMs }: Entry, nowMs: number): Aged => ({
  words,
  ageMs: atMs === undefined ? undefined : nowMs - atMs,
});

/** An older question of the same kind: what is to be struck was said anew. */
const closeOlder = ({ questions }: CaseState): readonly NewFact[] =>
  questions.flatMap(({ id, acts = [] }) =>
    acts.some(({ kind }) => kind === "strike")
      ? [{ type: "question.closed", questionId: id, outcome: "restated" } as const]
      : [],
  );

type Changed =
  { readonly kind: "ok"; readonly becomes: readonly Becomes[] } | { readonly kind: "no"; readonly words: string };

/** The value with its new number, in the unit it was said in; how and where it was taken stays. */
const changed = (entry: VitalEntry, number: SaidNumber): VitalValue | undefined =>
  inCanonicalUnit(withNumber(valueOf(entry), number, entry.said.unit), entry.said.unit);

/** What the reading becomes. It must be said whole, and be possible beside what stays of it. */
function changeOf({ vitals }: Entry, aged: Aged, low: SaidNumber | undefined, number: SaidNumber): Changed {
  const numbered = vitals.filter(({ code }) => code !== "map" || vitals.length === 1);
  const said = low === undefined ? [number] : [number, low];
  if (numbered.length !== said.length) return { kind: "no", words: sayOtherShape(aged) };
  const pairs = numbered.flatMap((entry, i) => {
    const value = said[i] && changed(entry, said[i]);
    return value === undefined ? [] : [{ entry, value }];
  });
  const whole = [...pairs.map(({ value }) => value), ...vitals.filter((v) => !numbered.includes(v))];
  const of = (code: VitalValue["code"]) => whole.find((v) => v.code === code)?.value;
  const wrong = whole.find((v) => !withinLimits(v.code, v.value)) ?? whole[0];
  const isPossible = whole.every((v) => withinLimits(v.code, v.value));
  if (wrong !== undefined && !(isPossible && pressureOrder({ sbp: of("sbp"), dbp: of("dbp"), map: of("map") })))
    return { kind: "no", words: sayQuestion("implausible", wrong, [], whole, undefined) };
  const becomes = pairs.map(({ entry: { id, atMs, readingId }, value }) => ({
    ...value,
    readingId,
    corrects: { id, takenAtMs: atMs },
  }));
  return { kind: "ok", becomes };
}

/**
 * "Strike the ICP of fifty", "correct the ICP of fifty to fifteen": names the newest entry that is meant, with its age, and
 * waits for "affirm". Nothing is struck before.
 */
export function decideStrike(
  { protocol }: AppContext,
  log: CaseState,
  intent: StrikeIntent,
  source: Source,
  nowMs: number,
): Decision {
  const ask = (prompt: string, act: Act): Decision =>
    askQuestion(log, { prompt, source, nowMs }, { reason: "always-confirm", acts: [act] }, closeOlder(log));
  if (intent.of === "entry") {
    const newest = newestEntry(protocol, log);
    if (newest === undefined) return answered(sayNoEntry("entry", undefined));
    return ask(askDisregard(newest.words ?? ""), { kind: "disregard", targetIds: newest.targetIds });
  }
  const { found, last } = findEntry(protocol, log, intent);
  if (found === undefined) return answered(sayNoEntry(sayAsked(protocol, intent), last && agedAt(last, nowMs)));
  const aged = agedAt(found, nowMs);
  if (intent.becomes === undefined)
    return ask(askStrike(aged), { kind: "strike", targetIds: found.ids, becomes: [], words: found.words });
  const change = changeOf(found, aged, intent.becomesLow, intent.becomes);
  if (change.kind === "no") return refused(change.words);
  const { becomes } = change;
  const words = sayReading({ vitals: becomes, findings: [] }, protocol.region);
  const targetIds = becomes.map(({ corrects }) => corrects.id);
  return ask(askCorrect(aged, words), { kind: "strike", targetIds, becomes, words });
}

/** What the newest values were that are gone now, and what counts in their place; nothing where only an older one went. */
function nowCounts({ protocol }: AppContext, log: CaseState, ids: readonly string[], nowMs: number) {
  const after = strike(log, ids);
  const codes = (Object.keys(log.vitals) as VitalCode[]).filter((code) =>
    ids.includes(log.vitals[code]?.entry.id ?? ""),
  );
  if (codes.length === 0) return undefined;
  const left = codes.flatMap((code) => selectLatest(after, code) ?? []);
  if (left.length === 0)
    return sayNoEntry(codes.includes("sbp") ? "pressure" : sayThing(codes[0] as StruckThing), undefined);
  const words = sayReading({ vitals: left.map(valueOf), findings: [] }, protocol.region);
  return { words, ageMs: nowMs - Math.min(...left.map(({ atMs }) => atMs)) };
}

/** Affirmed: these entries are struck, and what they become takes their place at their time. */
export function carryOutStrike(
  context: AppContext,
  log: CaseState,
  { targetIds, becomes, words }: StrikeAct,
  { heard, by }: Source,
  nowMs: number,
): Decision {
  if (!targetIds.every((id) => isStanding(log, id))) return answered(STRUCK_ALREADY);
  if (becomes.length > 0) {
    const values = becomes.map((value): NewFact => ({ type: "vital.recorded", ...value, heard, by }));
    const said = sayReading({ vitals: becomes, findings: [] }, context.protocol.region);
    return recorded(sayCorrected(said), [...values, { type: "entry.struck", targetIds, reason: "corrected" }]);
  }
  const done = [...linksOf(log.care.taken)].find(({ factId }) => targetIds.includes(factId));
  const left = done
    ? leavesAfter(context.protocol, log, done.fact, done.factId)
    : nowCounts(context, log, targetIds, nowMs);
  return recorded(sayStruck(words, left), [{ type: "entry.struck", targetIds, reason: "disregarded" }]);
}
