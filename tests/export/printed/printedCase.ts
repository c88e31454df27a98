import { defaultProtocol } from "../../../src/protocol/defaultProtocol.ts";
import { recordedCase, type RecordedCase } from "../../../src/export/recordedCase.ts";
import { printedRecord } from "../../../src/export/printed/printedRecord.ts";
import type { NewFact } from "../../../src/log/facts.ts";
import { CaseBuilder } from "../../log/caseBuilder.ts";

/** 15 January 2027, 14:02:00 in Vienna. Invented, as is all of this case. */
const OPENED_S = Date.UTC(2027, 0, 15, 13, 2) / 1000;
const ZONE = "Europe/Vienna";
export const MARK = { name: defaultProtocol.name, version: defaultProtocol.version, hash: "ab".repeat(32) };

export const HEARD = { heard: "as said", by: "listener" } as const;

/** A case that begins at `OPENED_S`; times of its facts are seconds after that. */
export class PrintedCase {
  readonly builder = new CaseBuilder();

  constructor() {
    this.at(0).builder.add({
      type: "case.opened",
      caseId: "3f2a",
      label: "kilo four seven",
      rehearsal: false,
      protocol: MARK,
    });
  }

  at(seconds: number): this {
    this.builder.at(OPENED_S + seconds);
    return this;
  }

  add(...facts: readonly NewFact[]): readonly string[] {
    return this.builder.add(...facts);
  }

  recorded(change: Partial<RecordedCase> = {}): RecordedCase {
    const { facts } = this.builder;
    const about = { caseId: "3f2a", label: "kilo four seven", rehearsal: false, protocol: defaultProtocol, mark: MARK };
    return recordedCase({ ...about, facts, ...change });
  }

  html(change: Partial<RecordedCase> = {}): string {
    const recorded = this.recorded(change);
    return printedRecord(recorded, { nowMs: this.builder.nowMs + 60_000, zone: ZONE });
  }
}

const drug = { drugId: "ketamine", drugClass: "induction" } as const;
const pressor = { drugId: "noradrenaline", drugClass: "vasopressor" } as const;

/** Everything that a record can show, in a case of an hour and a half. */
export function fullCase(): PrintedCase {
  const c = new PrintedCase();
  const { builder } = c;
  builder.patient({ ageA: 40, cause: "injury" });
  c.at(60);
  builder.say({ sbp: 130, dbp: 70, spo2: 96 }, "cuff");
  c.at(120).add({ type: "strength.affirmed", ...drug, strength: { amount: 50, unit: "mg", volumeMl: 1 }, ...HEARD });
  c.at(180);
  const wrong = builder.say({ sbp: 210, dbp: 100 });
  c.at(200);
  builder.strike(...wrong);
  c.at(240);
  builder.say({ sbp: 110, dbp: 50, spo2: 92 });
  builder.answer("suction", "done");
  c.add({
    type: "step.answered",
    stepId: defaultProtocol.groups[0]!.steps[0]!.id,
    answer: "waived",
    reason: "no time",
    ...HEARD,
  });
  c.add({ type: "fluid.given", fluidId: "isotonic crystalloid", volumeMl: 250, ...HEARD });
  c.add({ type: "infusion.set", ...pressor, rate: { value: 0.1, unit: "mcg/kg/min" }, mlPerH: 26.3, ...HEARD });
  c.at(300);
  builder.ask("q1");
  c.at(330).add({ type: "question.closed", questionId: "q1", outcome: "unconfirmed" });
  c.at(360).add(
    {
      type: "drug.given",
      ...drug,
      amount: { value: 60, unit: "mg" },
      planned: { value: 62, unit: "mg" },
      volumeMl: 1.2,
      ...HEARD,
    },
    { type: "airway.event", event: "bladeIn", ...HEARD },
  );
  const [second] = c.at(370).add({ type: "drug.given", ...drug, amount: { value: 40, unit: "mg" }, ...HEARD });
  c.at(380);
  builder.strike(second!);
  c.at(390).add(
    { type: "alert.raised", alertId: "mapLow", priority: "high", value: 60 },
    {
      type: "alert.announced",
      alertId: "mapLow",
      priority: "high",
      value: 60,
      text: "MAP sixty, thirty under ninety.",
    },
    { type: "speech.started", alertId: "mapLow", priority: "high", text: "MAP sixty, thirty under ninety." },
  );
  c.at(400).add({ type: "speech.cut", startedId: builder.facts.at(-1)!.id });
  builder.say({ map: 60, spo2: 88 });
  c.at(420).add({ type: "airway.event", event: "tubeIn", ...HEARD });
  c.add({ type: "airway.event", event: "tubeConfirmed", ...HEARD });
  c.at(450);
  builder.say({ etco2: 38, icp: 18, map: 84 });
  c.at(600);
  builder.say({ sbp: 120, dbp: 60, etco2: 33 });
  builder.patient({ herniation: true });
  c.add({ type: "rescue.started", ...HEARD });
  c.at(700).add({ type: "infusion.set", ...pressor, rate: { value: 0, unit: "mcg/kg/min" }, ...HEARD });
  c.at(2400);
  builder.say({ sbp: 140, dbp: 80, spo2: 97, etco2: 36, icp: 22 });
  c.at(2460).add({ type: "clock.changed", byMs: 3_600_000 });
  c.at(5400);
  builder.say({ map: 91 });
  return c;
}

/** The cells of every row that holds this text, as a reader meets them. Our markup nests no table in another. */
export function rowsWith(html: string, text: string): readonly (readonly string[])[] {
  const rows = [...html.matchAll(/<tr>(.*?)<\/tr>/gsu)].map(([, row]) =>
    [...row!.matchAll(/<t[hd][^>]*>(.*?)<\/t[hd]>/gsu)].map(([, cell]) => textOf(cell!)),
  );
  return rows.filter((cells) => cells.some((cell) => cell.includes(text)));
}

export const textOf = (markup: string): string =>
  markup
    .replace(/<style>.*?<\/style>/su, "")
    .replace(/<br>/gu, " / ")
    .replace(/<[^>]*>/gu, "")
    .replace(
      /&(?:lt|gt|quot|#39|amp);/gu,
      (entity) => ({ "&lt;": "<", "&gt;": ">", "&quot;": '"', "&#39;": "'" })[entity] ?? "&",
    );
