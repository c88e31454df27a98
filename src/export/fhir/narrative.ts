import type {
  CodeableConcept,
  Narrative,
  Observation,
  ObservationComponent,
  Period,
  Quantity,
  QuestionnaireResponse,
  Ratio,
  Resource,
} from "@medplum/fhirtypes";
import { escapeMarkup } from "../escapeMarkup.ts";

const asDiv = (inner: string): Narrative => ({
  status: "generated",
  div: `<div xmlns="http://www.w3.org/1999/xhtml">${inner}</div>`,
});

export const paragraphs = (lines: readonly string[]): Narrative =>
  asDiv(lines.map((line) => `<p>${escapeMarkup(line)}</p>`).join(""));

/** UCUM as people read it. */
const READ: readonly (readonly [RegExp, string])[] = [
  [/\[(Hg|H2O)\]/gu, "$1"],
  [/^ug/u, "micrograms"],
  [/\[IU\]/gu, "units"],
  [/^Cel$/u, "°C"],
  [/^a$/u, "years"],
  [/^\{score\}$/u, ""],
  [/[{}]/gu, ""],
];
const unitText = (code: string): string => READ.reduce((text, [from, to]) => text.replace(from, to), code);

/** A pressure that was worked out has more decimals than anybody reads. */
const shown = ({ value = 0, code }: Quantity): number => (code === "mm[Hg]" ? Math.round(value * 10) / 10 : value);
const quantityText = (q: Quantity | undefined): string =>
  q === undefined ? "" : `${q.comparator ?? ""}${shown(q)} ${unitText(q.unit ?? "")}`.trim();
const ratioText = (ratio: Ratio | undefined): string =>
  ratio === undefined ? "" : `${quantityText(ratio.numerator)} in ${quantityText(ratio.denominator)}`;
const words = (concept: CodeableConcept | undefined): string => concept?.text ?? "";
const joined = (parts: readonly string[], between: string): string => parts.filter((p) => p !== "").join(between);

/** "2027-01-15 13:02:05 UTC": all times of a bundle are in UTC. */
const clock = (iso: string): string => `${iso.slice(0, 10)} ${iso.slice(11, 19)} UTC`;
const spanText = ({ start, end }: Period): string =>
  joined([start === undefined ? "" : clock(start), end === undefined ? "until now" : `to ${clock(end)}`], " ");

const valueText = (from: Observation | ObservationComponent): string =>
  joined(
    [
      quantityText(from.valueQuantity),
      words(from.valueCodeableConcept),
      from.valueBoolean === undefined ? "" : from.valueBoolean ? "yes" : "no",
      words(from.dataAbsentReason),
    ],
    " ",
  );

function observationText(o: Observation): string {
  const parts = (o.component ?? []).map((part) => `${words(part.code)} ${valueText(part)}`);
  const how = joined([words(o.method), words(o.bodySite)], ", ");
  const all = joined([valueText(o), ...parts, how], ", ");
  return `${words(o.code)}: ${all}`;
}

const answersText = ({ item = [] }: QuestionnaireResponse): string =>
  item
    .flatMap((list) => list.item ?? [list])
    .map(({ text = "", answer = [] }) => {
      const said = answer[0]?.item?.filter(({ linkId }) => !/\.(?:time|words)$/u.test(linkId ?? "")) ?? [];
      const more = said.map(
        (part) => quantityText(part.answer?.[0]?.valueQuantity) || (part.answer?.[0]?.valueString ?? ""),
      );
      return `${text} ${joined([answer[0]?.valueCoding?.display ?? "", ...more], ", ")}`;
    })
    .join("; ");

type Line = { readonly at: string; readonly when: string; readonly text: string; readonly status: string };
const at = (iso = ""): Pick<Line, "at" | "when"> => ({ at: iso, when: iso === "" ? "" : clock(iso) });
const span = (period: Period | undefined): Pick<Line, "at" | "when"> =>
  period === undefined ? at() : { at: period.start ?? "", when: spanText(period) };

/** What a resource says in one line; nothing of those that have no line of their own. */
function lineOf(r: Resource): Line | undefined {
  switch (r.resourceType) {
    case "Observation":
      return {
        ...(r.effectivePeriod === undefined ? at(r.effectiveDateTime) : span(r.effectivePeriod)),
        text: observationText(r),
        status: r.status ?? "",
      };
    case "Procedure": {
      const notes = (r.note ?? []).map(({ time, text }) =>
        joined([text ?? "", time === undefined ? "" : clock(time)], " "),
      );
      return {
        ...(r.performedPeriod === undefined ? at(r.performedDateTime) : span(r.performedPeriod)),
        text: joined([words(r.code), words(r.outcome), ...notes], "; "),
        status: r.status ?? "",
      };
    }
    case "QuestionnaireResponse":
      return {
        ...at(r.authored),
        text: joined([r.item?.[0]?.item ? (r.item[0].text ?? "") : "", answersText(r)], ": "),
        status: r.status ?? "",
      };
    case "Medication":
      return {
        ...at(),
        text: `${words(r.code)}, concentration ${ratioText(r.ingredient?.[0]?.strength)}`,
        status: r.status ?? "",
      };
    case "MedicationAdministration": {
      const given = r.dosage?.text === undefined ? quantityText(r.dosage?.dose) : r.dosage.text;
      return {
        ...(r.effectivePeriod === undefined ? at(r.effectiveDateTime) : span(r.effectivePeriod)),
        text: joined(
          [r.medicationReference?.display ?? words(r.medicationCodeableConcept), given, words(r.statusReason?.[0])],
          ", ",
        ),
        status: r.status ?? "",
      };
    }
    case "DetectedIssue":
      return {
        ...(r.identifiedPeriod === undefined ? at(r.identifiedDateTime) : span(r.identifiedPeriod)),
        text: joined([words(r.code), r.severity ?? "", r.detail ?? ""], ", "),
        status: r.status ?? "",
      };
    case "Communication":
      return {
        ...at(r.sent),
        text: joined(
          (r.payload ?? []).map((p) => p.contentString ?? ""),
          " / ",
        ),
        status: r.status ?? "",
      };
    case "Provenance":
      return { ...at(r.occurredDateTime), text: `${words(r.activity)}: ${r.target?.length ?? 0} entries`, status: "" };
    default:
      return undefined;
  }
}

/** Standings that a reader must not overlook; the others go without saying. */
const STANDINGS: Readonly<Record<string, string>> = {
  "entered-in-error": "STRUCK OUT, does not count",
  "not-done": "NOT DONE",
  "in-progress": "goes on",
  stopped: "stopped",
};

/** The resources of a section as a list that people read, by time; what is struck out is shown so. */
export function listed(resources: readonly Resource[]): Narrative {
  const lines = resources
    .flatMap((resource) => lineOf(resource) ?? [])
    .toSorted((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0));
  const items = lines.map(({ when, text, status }) => {
    const told = escapeMarkup(joined([when, text], "; "));
    const standing = STANDINGS[status];
    const struck = status === "entered-in-error" ? `<span style="text-decoration: line-through">${told}</span>` : told;
    return `<li>${standing === undefined ? "" : `<b>${standing}: </b>`}${struck}</li>`;
  });
  return asDiv(`<ul>${items.join("")}</ul>`);
}
