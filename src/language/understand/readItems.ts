import type { VitalCode } from "../../core/vitals.ts";
import type { SaidItem, SaidVital } from "../intent.ts";
import type { SaidNumber } from "../saidNumber.ts";
import type { Mark } from "../jsgf/grammarTypes.ts";
import { saidNumber, type Half } from "./saidNumber.ts";
import { NUMBER_TAGS, tagValue } from "./tagValues.ts";

/**
 * The values and findings of one reading of an utterance, in the order they were said.
 *
 * Marks are taken in groups that end with an {item} mark. A mean said right after a pressure, with
 * no word of its own on how or where, was taken the way that pressure was.
 * @param half which half of a number said two ways counts.
 * Errors: undefined when a number cannot be read; one bad number spoils the whole reading.
 */
export function readItems(marks: readonly Mark[], half: Half): readonly SaidItem[] | undefined {
  const items: SaidItem[] = [];
  let pressure: Qualifiers = {};
  let start = 0;
  for (const [at, mark] of marks.entries()) {
    if (mark.tag !== "item") continue;
    const group = marks.slice(start, at);
    start = at + 1;
    const own = qualifiers(group);
    const isMean = group.some(({ tag }) => tag === "map");
    const read = readItem(group, isMean ? { ...pressure, ...own } : own, half);
    if (read === undefined) return undefined;
    items.push(...read);
    pressure = group.some(({ tag }) => tag === "sbp" || tag === "dbp") ? own : {};
  }
  return items;
}

type Qualifiers = Pick<SaidVital, "method" | "site" | "level">;

function qualifiers(group: readonly Mark[]): Qualifiers {
  const method = tagValue(group, "method");
  const site = tagValue(group, "site");
  const level = tagValue(group, "level");
  return { ...(method && { method }), ...(site && { site }), ...(level && { level }) };
}

function readItem(group: readonly Mark[], how: Qualifiers, half: Half): readonly SaidItem[] | undefined {
  const sex = tagValue(group, "sex");
  if (sex !== undefined) return [{ kind: "sex", sex }];
  const cause = tagValue(group, "cause");
  if (cause !== undefined) return [{ kind: "cause", cause }];
  const herniation = tagValue(group, "herniation");
  if (herniation !== undefined) return [{ kind: "herniation", present: herniation === "suspected" }];
  const untestable = tagValue(group, "notTestable");
  if (untestable !== undefined) return [{ kind: "finding", code: untestable, finding: "not-testable" }];
  if (tagValue(group, "side") !== undefined) return readPupils(group, half);

  const unit = tagValue(group, "unit");
  const items: SaidItem[] = [];
  for (const code of NUMBER_TAGS) {
    const mark = group.find(({ tag }) => tag === code);
    if (mark === undefined) continue;
    const said = saidNumber(mark, group, half);
    if (said === undefined) return undefined;
    items.push({ ...vital(code, said), ...(unit && { unit }), ...how });
  }
  return items;
}

function readPupils(group: readonly Mark[], half: Half): readonly SaidItem[] | undefined {
  const side = tagValue(group, "side");
  const reaction = tagValue(group, "reaction");
  const unit = tagValue(group, "unit");
  const size = group.find(({ tag }) => tag === "pupil");
  const said = size && saidNumber(size, group, half);
  const codes = (["pupilLeft", "pupilRight"] as const).filter(
    (code) => side === "both" || code === (side === "left" ? "pupilLeft" : "pupilRight"),
  );
  if (said !== undefined) {
    return codes.map((code) => ({ ...vital(code, said), ...(unit && { unit }), ...(reaction && { reaction }) }));
  }
  if (size !== undefined || reaction === undefined) return undefined;
  return codes.map((code) => ({ kind: "finding", code, finding: reaction }));
}

const vital = (code: VitalCode, said: SaidNumber): SaidVital => ({ kind: "vital", code, ...said });
