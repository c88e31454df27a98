import type { Bundle, CodeableConcept, Quantity, Resource } from "@medplum/fhirtypes";
import { basename } from "node:path";
import { describe, expect, it } from "vitest";
import { readTalkLine } from "../../../src/cli/talkLine.ts";
import { collectionBundle } from "../../../src/export/fhir/bundle.ts";
import { caseScripts, saidIn } from "../../cases/script.ts";
import { BEGAN_MS, playMoves, recordedFrom, type Move } from "../randomCase.ts";
import { complaints } from "./judges.ts";

/** The moves of a written case: "[2:30] sats ninety" is a wait until then, and what is said. */
function movesOf(name: string): readonly Move[] {
  const script = caseScripts().find(({ path }) => basename(path) === name);
  let nowMs = 0;
  return saidIn(script!).flatMap((raw): readonly Move[] => {
    const line = readTalkLine(raw);
    if (!line.ok) throw new Error(line.error);
    const { atMs = nowMs, text } = line.value;
    const wait: Move = { kind: "wait", seconds: (atMs - nowMs) / 1000 };
    nowMs = atMs;
    const say: Move = { kind: "say", words: text, by: "typed", then: undefined };
    return [...(wait.seconds > 0 ? [wait] : []), ...(text === "" ? [] : [say])];
  });
}

const clock = (iso: string | undefined): string => {
  if (iso === undefined) return "";
  const seconds = (Date.parse(iso) - BEGAN_MS) / 1000;
  return `${Math.floor(seconds / 60)}:${String(Math.floor(seconds % 60)).padStart(2, "0")}`;
};
const amount = (q: Quantity | undefined): string =>
  q === undefined ? "" : `${q.comparator ?? ""}${q.value} ${q.code}`.trim();
const words = (c: CodeableConcept | undefined): string => c?.text ?? "";
const join = (...parts: readonly (string | undefined)[]): string =>
  parts.filter((part) => part !== undefined && part !== "").join("; ");

/** A resource in one line: when, what, how much, how. */
function told(resource: Resource): readonly string[] {
  switch (resource.resourceType) {
    case "Observation": {
      const { effectiveDateTime, effectivePeriod, code, component = [], status } = resource;
      const when = clock(effectiveDateTime) || `${clock(effectivePeriod?.start)} to ${clock(effectivePeriod?.end)}`;
      const parts = component.map((part) =>
        join(
          words(part.code),
          amount(part.valueQuantity),
          words(part.valueCodeableConcept),
          words(part.dataAbsentReason),
        ),
      );
      const value = join(
        amount(resource.valueQuantity),
        words(resource.valueCodeableConcept),
        resource.valueBoolean?.toString(),
        words(resource.dataAbsentReason),
      );
      const from = (resource.derivedFrom ?? []).length;
      return [join(when, status, words(code), value, ...parts, words(resource.method), from > 0 ? `from ${from}` : "")];
    }
    case "MedicationAdministration": {
      const { effectiveDateTime, effectivePeriod, status, dosage, medicationReference } = resource;
      const drug = medicationReference?.display ?? words(resource.medicationCodeableConcept);
      const until = effectivePeriod?.end === undefined ? "" : ` to ${clock(effectivePeriod.end)}`;
      const when = clock(effectiveDateTime) || `${clock(effectivePeriod?.start)}${until}`;
      const given = join(amount(dosage?.dose), amount(dosage?.rateQuantity), words(resource.statusReason?.[0]));
      return [join(when, status, drug, given, dosage?.text)];
    }
    case "Procedure": {
      const { performedPeriod: { start, end } = {}, status, outcome, code, note = [] } = resource;
      const calls = note.flatMap(({ time, text }) => (time === undefined ? [] : [`${text} ${clock(time)}`]));
      const what = code?.coding?.[0]?.code === "112798008" ? note[0]?.text : words(code);
      return [join(`${clock(start)} to ${clock(end)}`, status, what, words(outcome), ...calls)];
    }
    case "QuestionnaireResponse":
      return (resource.item ?? []).flatMap((list) =>
        (list.item ?? []).map(({ text, answer = [] }) => {
          const parts = new Map(answer[0]?.item?.map((part) => [part.linkId?.split(".")[1], part.answer?.[0]]));
          const more = [amount(parts.get("value")?.valueQuantity), parts.get("reason")?.valueString];
          const role = parts.get("role")?.valueString;
          const when = clock(parts.get("time")?.valueDateTime);
          return join(when, resource.status, list.text, text, answer[0]?.valueCoding?.code, ...more, role);
        }),
      );
    case "Medication": {
      const { numerator, denominator } = resource.ingredient?.[0]?.strength ?? {};
      return [join(words(resource.code), resource.status, `${amount(numerator)} in ${amount(denominator)}`)];
    }
    default:
      return [];
  }
}

const toldOf = ({ entry = [] }: Bundle): readonly string[] =>
  entry.flatMap(({ resource }) => (resource === undefined ? [] : told(resource)));

/** Held line by line against what is said in the written case; each CPP is also the one that the terminal says there. */
const HERNIATION_IN_FLIGHT: readonly string[] = [
  "0:00; final; Age; 45 a",
  "0:00; final; Body weight; 90 kg; measured, or told as such",
  "0:00; final; Body height; 180 cm; measured, or told as such",
  "0:30; final; Blood pressure; Systolic blood pressure; 130 mm[Hg]; Diastolic blood pressure; 70 mm[Hg]; arterial",
  "0:30; final; Mean arterial pressure; 90 mm[Hg]; arterial, transducer zeroed at the tragus",
  "0:30; final; Heart rate; 80 /min",
  "0:30; final; Oxygen saturation; 97 %",
  "0:30; final; End-tidal carbon dioxide, pressure; 37 mm[Hg]",
  "0:30; final; Intracranial pressure; 18 mm[Hg]",
  "0:30; final; Glasgow coma score, eye; 2 {score}",
  "0:30; final; Glasgow coma score, motor; 4 {score}",
  "0:30; final; Glasgow coma score, verbal; not testable",
  "0:30; final; Left pupil; 3 mm; Reaction of the left pupil; brisk",
  "0:30; final; Right pupil; 3 mm; Reaction of the right pupil; brisk",
  "5:00; final; Blood pressure; Systolic blood pressure; 132 mm[Hg]; Diastolic blood pressure; 72 mm[Hg]; arterial",
  "5:00; final; Mean arterial pressure; 92 mm[Hg]; arterial",
  "5:00; final; Heart rate; 78 /min",
  "5:00; final; Oxygen saturation; 97 %",
  "5:00; final; End-tidal carbon dioxide, pressure; 38 mm[Hg]",
  "8:00; final; Left pupil; 6 mm; Reaction of the left pupil; fixed",
  "8:00; final; Intracranial pressure; 38 mm[Hg]",
  "8:40; final; End-tidal carbon dioxide, pressure; 32 mm[Hg]",
  "9:30; final; Blood pressure; Systolic blood pressure; 180 mm[Hg]; Diastolic blood pressure; 90 mm[Hg]; arterial",
  "9:30; final; Mean arterial pressure; 120 mm[Hg]; arterial",
  "9:30; final; Heart rate; 52 /min",
  "9:30; final; Oxygen saturation; 97 %",
  "9:30; final; End-tidal carbon dioxide, pressure; 31 mm[Hg]",
  "15:00; final; Intracranial pressure; 24 mm[Hg]",
  "15:00; final; Left pupil; 4 mm; Reaction of the left pupil; sluggish",
  "20:00; final; Blood pressure; Systolic blood pressure; 140 mm[Hg]; Diastolic blood pressure; 80 mm[Hg]; arterial",
  "20:00; final; Mean arterial pressure; 100 mm[Hg]; arterial",
  "20:00; final; Heart rate; 70 /min",
  "20:00; final; Oxygen saturation; 98 %",
  "20:00; final; End-tidal carbon dioxide, pressure; 33 mm[Hg]",
  "30:00; final; End-tidal carbon dioxide, pressure; 32 mm[Hg]",
  "0:00; final; Sex, as said for doses; male",
  "0:00; final; Cause of raised pressure; injury",
  "0:30; final; Cerebral perfusion pressure, MAP less ICP; 72 mm[Hg]; computed, MAP less ICP; from 2",
  "0:30 to 5:00; final; Cerebral perfusion pressure, MAP less ICP; 74 mm[Hg]; computed, MAP less ICP; from 2",
  "5:00 to 8:00; final; Cerebral perfusion pressure, MAP less ICP; 54 mm[Hg]; computed, MAP less ICP; from 2",
  "8:00 to 9:30; final; Cerebral perfusion pressure, MAP less ICP; 82 mm[Hg]; computed, MAP less ICP; from 2",
  "9:30 to 15:00; final; Cerebral perfusion pressure, MAP less ICP; 96 mm[Hg]; computed, MAP less ICP; from 2",
  "15:00 to 20:00; final; Cerebral perfusion pressure, MAP less ICP; 76 mm[Hg]; computed, MAP less ICP; from 2",
  "0:30; final; Glasgow coma score, total; a part was not testable; from 3",
  "0:00 to ; final; Phase of the case; watch",
  "8:40 to ; final; Called out: hyperventilation; true",
  "8:00 to 28:10; completed; Time-limited measures against herniation",
  "8:00; completed; Herniation rescue; Head up thirty degrees, neck straight?; done",
  "8:40; completed; Herniation rescue; Osmotic per protocol?; done",
  "8:40; completed; Herniation rescue; Neurosurgeon called?; done",
  "8:40; completed; sodium chloride 3 %; 250 mL; 250 mL",
];

/** The same, without what was measured. The terminal says forty, thirty and twenty-five seconds for the attempts. */
const FAILED_FIRST_ATTEMPT: readonly string[] = [
  "4:40 to 5:20; stopped; Attempt 1; blade out without a tube; blade in 4:40; blade out 5:20",
  "6:00 to 6:30; completed; Attempt 2; tube came out again unproved; blade in 6:00; tube in 6:30; tube out 7:10",
  "8:40 to 9:05; completed; Attempt 3; tube in and confirmed; blade in 8:40; tube in 9:05; tube confirmed 9:20",
  "0:20; in-progress; Preparation; Capnograph on, waveform showing?; done",
  "0:20; in-progress; Preparation; First, second, third and last plans said aloud?; done",
  "0:20; in-progress; Preparation; At which saturation do we stop?; done; 93 %",
  "0:20; in-progress; Preparation; How many attempts before we change?; done; 2 {attempts}",
  "7:10; in-progress; Failed airway; Failure called aloud?; done",
  "7:10; in-progress; Failed airway; Mask and adjuncts: oxygen going in?; done",
  "7:10; in-progress; Failed airway; Supraglottic device in, chest moving?; done",
  "ketamine; active; 50 mg in 1 mL",
  "rocuronium; active; 10 mg in 1 mL",
  "phenylephrine; active; 10 mg in 100 mL",
  "3:40; completed; ketamine; 110 mg; 110 mg, 2.2 mL",
  "3:40; completed; rocuronium; 90 mg; 90 mg, 9 mL",
];

describe("a written case as a bundle", () => {
  it("herniation in flight: every value, dose, rate and attempt as it was said", () => {
    const bundle = collectionBundle(recordedFrom(playMoves(movesOf("herniation-in-flight.txt"))), BEGAN_MS);
    expect(complaints(bundle)).toEqual([]);
    expect(toldOf(bundle)).toEqual(HERNIATION_IN_FLIGHT);
  });

  it("failed first attempt: three attempts with their calls and what came of each, lists, concentrations, and both doses", () => {
    const bundle = collectionBundle(recordedFrom(playMoves(movesOf("failed-first-attempt.txt"))), BEGAN_MS);
    expect(complaints(bundle)).toEqual([]);
    const given = toldOf(bundle).filter((line) => !/; (final|entered-in-error); /u.test(line));
    expect(given).toEqual(FAILED_FIRST_ATTEMPT);
  });
});
