import { pressureOrder, withinLimits } from "../../core/plausible.ts";
import type { SaidVital } from "../../language/intent.ts";
import type { CaseState } from "../../log/caseState.ts";
import type { Candidate, QuestionReason, VitalValue } from "../../log/facts.ts";
import type { HeardBy } from "../../log/heardBy.ts";
import type { Protocol } from "../../protocol/protocol.ts";
import { sayChoice } from "../../language/sentences/question.ts";
import { saidUnitWords } from "../../language/sentences/vital.ts";
import { isJump } from "./jump.ts";
import { possibleSoundAlikes, riskySoundAlikes } from "./soundAlike.ts";
import { chooseUnit } from "./units.ts";

/** The result of looking at values that stand or fall together (a pressure with its mean, or one other vital). */
export type Check =
  | { readonly kind: "take"; readonly values: readonly VitalValue[] }
  | {
      readonly kind: "ask";
      readonly reason: QuestionReason;
      readonly about: VitalValue;
      /** Everything said with it, to name what contradicts what. */
      readonly together: readonly VitalValue[];
      readonly candidates: readonly Candidate[];
    };

type Group = readonly VitalValue[];

const statement = (vitals: Group) => ({ vitals, findings: [] });
const candidate = (group: Group, about: VitalValue): Candidate => ({
  choose: sayChoice(about),
  number: about.said.value,
  statement: statement(group),
});
const byUnit = (value: VitalValue): Candidate => ({
  choose: saidUnitWords(value.said.unit),
  number: undefined,
  statement: statement([value]),
});
const replaced = (group: Group, at: VitalValue, by: VitalValue): Group => group.map((v) => (v === at ? by : v));
const byCode = (group: Group, code: VitalValue["code"]): number | undefined =>
  group.find((v) => v.code === code)?.value;

/** Diastolic under mean under systolic, among the values said together. */
const ordered = (group: Group): boolean =>
  pressureOrder({ sbp: byCode(group, "sbp"), dbp: byCode(group, "dbp"), map: byCode(group, "map") });
const sound = (group: Group): boolean => group.every((v) => withinLimits(v.code, v.value)) && ordered(group);

/** Impossible as heard: offer what it may have been, or ask for it anew. */
function askImpossible(group: Group, first: VitalValue, by: HeardBy): Check {
  for (const value of group) {
    const [likely] = possibleSoundAlikes(by, value, (other) => sound(replaced(group, value, other)));
    if (likely !== undefined) {
      const candidates = [candidate(replaced(group, value, likely), likely)];
      return { kind: "ask", reason: "implausible", about: likely, together: group, candidates };
    }
  }
  const about = group.find((v) => !withinLimits(v.code, v.value)) ?? first;
  return { kind: "ask", reason: "implausible", about, together: group, candidates: [] };
}

/**
 * Decides whether values that were said together may be recorded as heard, or what must be asked first.
 * In this order: which unit; possible at all; a sound-alike that would change what is done; a jump from the last value.
 *
 * @param group   said values that stand or fall together.
 * @param carried values of the same reading that a correction leaves as they were; they were checked before.
 */
export function checkGroup(
  log: CaseState,
  protocol: Protocol,
  by: HeardBy,
  group: readonly SaidVital[],
  carried: Group,
  nowMs: number,
): Check {
  const settled: VitalValue[] = [...carried];
  let fits = true;
  for (const said of group) {
    const choice = chooseUnit(said);
    if (choice.kind === "ask") {
      // Only single values come in more than one bare unit, so the group is this one value.
      const about = choice.values[0];
      return { kind: "ask", reason: "unit", about, together: [about], candidates: choice.values.map(byUnit) };
    }
    settled.push(choice.value);
    fits &&= choice.kind === "settled";
  }
  const [first] = settled;
  if (first === undefined) return { kind: "take", values: [] };
  if (!fits || !ordered(settled)) return askImpossible(settled, first, by);
  for (const value of settled) {
    if (carried.includes(value)) continue;
    const risky = riskySoundAlikes(log, protocol, by, value, (other) => sound(replaced(settled, value, other)));
    if (risky.length > 0) {
      const others = risky.map((other) => candidate(replaced(settled, value, other), other));
      return {
        kind: "ask",
        reason: "sound-alike",
        about: value,
        together: settled,
        candidates: [candidate(settled, value), ...others],
      };
    }
  }
  const far = settled.find((value) => !carried.includes(value) && isJump(log, protocol, value, nowMs));
  if (far !== undefined)
    return { kind: "ask", reason: "jump", about: far, together: settled, candidates: [candidate(settled, far)] };
  return { kind: "take", values: settled };
}

/** Values that passed every check but whose sound left a doubt. */
export function inDoubt(check: Check): Check {
  if (check.kind === "ask") return check;
  const [about] = check.values;
  if (about === undefined) return check;
  const candidates = [candidate(check.values, about)];
  return { kind: "ask", reason: "acoustic", about, together: check.values, candidates };
}
