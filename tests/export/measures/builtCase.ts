import { recordedCase, type RecordedCase } from "../../../src/export/recordedCase.ts";
import type { AirwayEvent } from "../../../src/log/careFacts.ts";
import type { NewFact } from "../../../src/log/facts.ts";
import { defaultProtocol } from "../../../src/protocol/defaultProtocol.ts";
import type { DrugClass, Protocol } from "../../../src/protocol/protocol.ts";
import { CaseBuilder } from "../../log/caseBuilder.ts";

const said = { heard: "as said", by: "typed" } as const;

export const airway = (event: AirwayEvent): NewFact => ({ type: "airway.event", event, ...said });

export const given = (drugClass: DrugClass, drugId: string = drugClass): NewFact => {
  return { type: "drug.given", drugId, drugClass, amount: { value: 1, unit: "mg" }, ...said };
};

export const infusion = (drugClass: DrugClass, perH: number, drugId: string = drugClass): NewFact => {
  return { type: "infusion.set", drugId, drugClass, rate: { value: perH, unit: "mg/h" }, ...said };
};

/** What the tool writes by itself. */
export const announced = (promptId: string, key: string): NewFact => {
  return { type: "prompt.announced", promptId, key, text: "as said" };
};

/** A case built by hand, minute by minute. */
export class BuiltCase extends CaseBuilder {
  min(minutes: number): this {
    return this.at(minutes * 60);
  }

  recorded(protocol: Protocol = defaultProtocol): RecordedCase {
    const mark = { name: protocol.name, version: protocol.version };
    return recordedCase({
      caseId: "built",
      label: "kilo four seven",
      rehearsal: false,
      facts: this.facts,
      protocol,
      mark,
    });
  }
}

export const built = (build: (b: BuiltCase) => unknown): RecordedCase => {
  const b = new BuiltCase();
  build(b);
  return b.recorded();
};
