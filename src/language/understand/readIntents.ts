import { slotOf, type Intent, type SaidItem } from "../intent.ts";
import type { Parse } from "../jsgf/grammarTypes.ts";
import { readCare } from "./readCare.ts";
import { readItems } from "./readItems.ts";
import { saidNumber, type Half } from "./saidNumber.ts";
import { tagValue } from "./tagValues.ts";

/**
 * What one reading of an utterance means.
 *
 * Usually one intent; none when a number in it cannot be read; two when one breath gives the same
 * vital two values ("sats ninety four, sats ninety six"): first and last are both offered, because
 * which one stands is the speaker's to say.
 */
export function readIntents(parse: Parse): readonly Intent[] {
  return readHalf(parse, "both");
}

/** What it means where a number in it was said two ways that disagree: either half may be the slip. */
export function readHalves(parse: Parse): readonly Intent[] {
  return parse.some(({ tag }) => tag === "twoWaysWhole")
    ? [...readHalf(parse, "whole"), ...readHalf(parse, "digits")]
    : [];
}

function readHalf(parse: Parse, half: Half): readonly Intent[] {
  const command = tagValue(parse, "do");
  if (command !== undefined) return [{ kind: "command", command }];

  const about = tagValue(parse, "why");
  if (about !== undefined) return [{ kind: "why", about }];

  const care = readCare(parse);
  if (care !== undefined) return care;

  const correction = parse.some(({ tag }) => tag === "correction");
  if (parse.some(({ tag }) => tag === "item")) {
    const items = readItems(parse, half);
    if (items === undefined || items.length === 0) return [];
    return [firstOfEach(items), firstOfEach(items.toReversed()).toReversed()].map((kept) => ({
      kind: "vitals",
      correction,
      items: kept,
      doubtful: parse.some(({ tag }) => tag === "doubtful"),
    }));
  }

  const unit = tagValue(parse, "unit");
  const number = parse.find(({ tag }) => tag === "number");
  if (number !== undefined) {
    const said = saidNumber(number, parse, half);
    const denies = parse.some(({ tag }) => tag === "denial");
    return said ? [{ kind: "number", correction, number: said, ...(unit && { unit }), ...(denies && { denies }) }] : [];
  }
  return unit ? [{ kind: "unit", unit }] : [];
}

function firstOfEach(items: readonly SaidItem[]): readonly SaidItem[] {
  return items.filter((item, at) => items.findIndex((other) => slotOf(other) === slotOf(item)) === at);
}
