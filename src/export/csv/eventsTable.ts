import type { Fact } from "../../log/facts.ts";
import { findMedicine } from "../../protocol/findMedicine.ts";
import { findStep } from "../../protocol/findStep.ts";
import { isoTime } from "../isoTime.ts";
import type { RecordedCase } from "../recordedCase.ts";
import { toSixDigits, ucumOf } from "../ucum.ts";
import { tellWords, verbatim } from "../verbatim.ts";
import { CASE_HEADER, caseCells } from "./columns.ts";
import type { Cell, Table } from "./writeCsv.ts";

const HEADER = [...CASE_HEADER, "status", "event", "what", "detail", "priority", "seconds", "heard by", "heard"];

/** What, its detail, its priority, and a length of time in seconds. `undefined`: no row of this table. */
type Told = readonly [what: Cell, detail?: Cell, priority?: Cell, seconds?: Cell] | undefined;

const join = (...parts: readonly (string | number | undefined)[]): string =>
  parts.filter((part) => part !== undefined && part !== "").join(" ");

/**
 * What this table says of a fact. Values and drugs have tables of their own; the words of each reply, and how it is to
 * sound, are in the record file alone.
 */
function told({ protocol, facts }: RecordedCase, fact: Fact): Told {
  switch (fact.type) {
    case "case.opened":
    case "protocol.replaced":
      return [fact.protocol.name, join(fact.protocol.version, fact.protocol.hash)];
    case "sex.recorded":
      return [fact.sex];
    case "cause.recorded":
      return [fact.cause];
    case "herniation.recorded":
      return [fact.present ? "suspected" : "none"];
    case "entry.struck": {
      const targets = fact.targetIds.map((target) => facts.findIndex(({ id }) => id === target));
      // As the record file numbers its entries, from 0.
      return [fact.reason, `entries ${targets.join(" ")} of the record`];
    }
    case "question.asked":
      return [fact.question.reason, tellWords(fact.question.prompt)];
    case "question.closed": {
      const asked = facts.find((f) => f.type === "question.asked" && f.question.id === fact.questionId);
      return [fact.outcome, asked?.type === "question.asked" ? tellWords(asked.question.heard) : undefined];
    }
    case "step.called":
      return [findStep(protocol, fact.stepId)?.name ?? fact.stepId];
    case "step.answered": {
      const { stepId, answer, value, reason, role } = fact;
      return [findStep(protocol, stepId)?.name ?? stepId, join(answer, value?.value, value?.unit, reason, role)];
    }
    case "phase.entered":
      return [fact.phase];
    case "airway.event":
      return [fact.event];
    case "clock.started":
    case "clock.stopped":
      return [fact.clock];
    case "strength.affirmed": {
      const { amount, unit, volumeMl } = fact.strength;
      const name = findMedicine(protocol, fact.drugId)?.name ?? fact.drugId;
      return [name, `${amount} ${ucumOf(unit)} in ${volumeMl} mL`];
    }
    case "cylinder.recorded":
      return [`${fact.contentsL} L`, `${fact.flowLPerMin} L/min`];
    case "recipe.started":
      return [findMedicine(protocol, fact.drugId)?.name ?? fact.drugId, fact.recipeId];
    case "recipe.ended":
    case "rescue.started":
    case "rescue.ended":
    case "failure.called":
    case "case.closed":
      return [undefined];
    case "alert.raised":
      return [fact.alertId, toSixDigits(fact.value), fact.priority];
    case "alert.announced":
      return [fact.alertId, fact.text, fact.priority];
    case "alert.acknowledged":
      return [fact.alertId, fact.key];
    case "alert.cleared":
      return [fact.alertId, fact.withdrawn === true ? "its value was struck" : undefined];
    case "prompt.announced":
      return [fact.promptId, tellWords(fact.text)];
    case "standBy.started":
    case "alerts.paused":
      return [undefined, undefined, undefined, (fact.untilMs - fact.atMs) / 1000];
    case "device.slept":
      return [undefined, undefined, undefined, fact.forMs / 1000];
    case "clock.changed":
      return [fact.byMs < 0 ? "set back" : "set forward", undefined, undefined, Math.abs(fact.byMs) / 1000];
    case "vital.recorded":
    case "finding.recorded":
    case "drug.given":
    case "infusion.set":
    case "fluid.given":
    case "dose.said":
    case "recipe.moved":
    case "list.read":
    case "talk.set":
    case "voice.set":
    case "speech.started":
    case "speech.cut":
      return undefined;
  }
}

/** Struck, never confirmed, or as it was recorded. */
function statusOf({ struckIds }: RecordedCase, closed: ReadonlyMap<string, string>, fact: Fact): string {
  if (struckIds.has(fact.id)) return "struck";
  if (fact.type !== "question.asked") return "recorded";
  const outcome = closed.get(fact.question.id);
  return outcome === undefined || outcome === "unconfirmed" ? "unconfirmed" : "recorded";
}

/**
 * One row for everything that happened besides values and drugs, in its order.
 *
 * @param zone IANA name: times are written with the offset of this zone.
 */
export function eventsTable(recorded: RecordedCase, zone: string): Table {
  const { facts } = recorded;
  const time = isoTime(zone);
  const heard = verbatim(facts);
  const closed = new Map(facts.flatMap((f) => (f.type === "question.closed" ? [[f.questionId, f.outcome]] : [])));
  const rows = facts.flatMap((fact): readonly (readonly Cell[])[] => {
    const cells = told(recorded, fact);
    if (cells === undefined) return [];
    const [what, detail, priority, seconds] = cells;
    const by = "by" in fact ? fact.by : undefined;
    const status = statusOf(recorded, closed, fact);
    const words = heard(fact);
    return [[...caseCells(recorded, time(fact.atMs)), status, fact.type, what, detail, priority, seconds, by, words]];
  });
  return { header: HEADER, rows };
}
