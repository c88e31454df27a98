import type { Bundle, Composition } from "@medplum/fhirtypes";
import { Fhir } from "fhir";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { documentBundle } from "../../../src/export/fhir/bundle.ts";
import { defaultProtocol } from "../../../src/protocol/defaultProtocol.ts";
import { complaints } from "./judges.ts";
import { playMoves, randomMoves, recordedFrom, type Move } from "../randomCase.ts";

const say = (words: string, then = "affirm"): Move => ({ kind: "say", words, by: "typed", then });
const documentOf = (moves: readonly Move[], rehearsal = false): Bundle =>
  documentBundle(recordedFrom(playMoves(moves), rehearsal), 1_900_000_000_000);
const head = ({ entry = [] }: Bundle): Composition => entry[0]?.resource as Composition;

/** The lines that people read under a title, without markup. */
function linesUnder(bundle: Bundle, title: string): readonly string[] {
  const section = head(bundle).section?.find((one) => one.title === title);
  return [...(section?.text?.div ?? "").matchAll(/<li>(.*?)<\/li>/gu)].map(([, line = ""]) => line);
}

const fhir = new Fhir();

describe("a case as a document", () => {
  it("can be read without any of its entries: each section says in words what they hold, in the order of time", () => {
    const bundle = documentOf([
      say("one twenty over eighty"),
      { kind: "wait", seconds: 60 },
      say("i c p twenty"),
      say("right pupil six fixed", "negative"),
      say("saline 250 given"),
    ]);
    // 15 January 2027, 08:00: where every played case begins.
    expect(linesUnder(bundle, "Findings, values and course")).toEqual([
      "2027-01-15 08:00:00 UTC; Blood pressure: Systolic blood pressure 120 mmHg, Diastolic blood pressure 80 mmHg",
      "2027-01-15 08:00:00 UTC; Mean arterial pressure: 93.3 mmHg, computed, diastolic and a third of the pulse pressure",
      "2027-01-15 08:00:00 UTC to 2027-01-15 08:01:00 UTC; Cerebral perfusion pressure, MAP less ICP: 73.3 mmHg, computed, MAP less ICP",
      "2027-01-15 08:01:00 UTC; Intracranial pressure: 20 mmHg",
      "2027-01-15 08:01:00 UTC; Right pupil: 6 mm, Reaction of the right pupil fixed, right pupil",
    ]);
    expect(linesUnder(bundle, "Drugs and fluids, and concentrations that were read back")).toEqual([
      "2027-01-15 08:01:00 UTC; isotonic crystalloid, 250 mL",
    ]);
  });

  it("shows what was struck out as struck out, and what was passed over as not done", () => {
    const bundle = documentOf([say("heart rate ninety"), say("disregard"), say("sedation not needed no time")]);
    expect(linesUnder(bundle, "Findings, values and course")).toEqual([
      '<b>STRUCK OUT, does not count: </b><span style="text-decoration: line-through">2027-01-15 08:00:00 UTC; Heart rate: 90 /min</span>',
    ]);
    expect(linesUnder(bundle, "Drugs and fluids, and concentrations that were read back")).toEqual([
      "<b>NOT DONE: </b>2027-01-15 08:00:00 UTC; sedation, not needed: no time",
    ]);
  });

  it("begins with the caution of the protocol, once", () => {
    const text = JSON.stringify(head(documentOf([say("heart rate ninety")])).text);
    expect(text.split(defaultProtocol.caution)).toHaveLength(2);
  });

  it("holds every entry under a section or in its head, and says each section in words", () => {
    fc.assert(
      fc.property(randomMoves, (moves) => {
        const bundle = documentOf(moves);
        const { section = [], subject, encounter, author = [] } = head(bundle);
        const under = section.flatMap(({ entry = [] }) => entry);
        const led = new Set([subject, encounter, ...author, ...under].map((to) => to?.reference));
        const [, ...entries] = bundle.entry ?? [];
        expect(entries.filter(({ fullUrl }) => !led.has(fullUrl))).toEqual([]);
        expect(section.filter(({ text }) => (text?.div ?? "").length < 60)).toEqual([]);
      }),
      { numRuns: 30 },
    );
  });

  it("survives the way to XML and back by another library", () => {
    const bundle = documentOf([say("weight 80 kilos"), say("map 90"), say("left pupil four brisk"), say("disregard")]);
    // Its way back from XML leaves decimals as text.
    const decimalsAsText = (_key: string, value: unknown): unknown =>
      typeof value === "number" ? String(value) : value;
    const plain: unknown = JSON.parse(JSON.stringify(bundle, decimalsAsText));
    expect(fhir.xmlToObj(fhir.objToXml(bundle))).toEqual(plain);
  });

  it("has no markup but its own, whatever was heard", () => {
    const hostile = 'heart <b onclick="x">&amp; ]]> \u0000\u202e\ud800 "ninety"';
    const unanswered: Move = { kind: "say", words: "i c p fifteen", by: "typed", then: undefined };
    const facts = playMoves([say("heart rate ninety"), unanswered]).map((fact) => {
      if (fact.type === "question.asked") return { ...fact, question: { ...fact.question, heard: hostile } };
      return "heard" in fact ? { ...fact, heard: hostile } : fact;
    });
    const bundle = documentBundle(recordedFrom(facts), 1_900_000_000_000);
    expect(complaints(bundle)).toEqual([]);
    const divs = (head(bundle).section ?? []).map(({ text }) => text?.div ?? "").join("");
    expect(divs).toContain("heart &lt;b onclick=&quot;x&quot;&gt;&amp;amp; ]]&gt; ");
    expect(
      divs.replace(/<\/?(?:div|p|ul|li|b|span)(?: (?:xmlns|style)="[^"<]*")?>|&(?:amp|lt|gt|quot|#39);/gu, ""),
    ).not.toMatch(/[<>&\u0000\u202e\ud800]/u);
    expect(JSON.stringify(bundle)).not.toMatch(/\\u0000|\\ud800/u);
  });
});
