import type { VitalCode } from "../../core/vitals.ts";
import type { AlertRule, ConfirmRule, Protocol, Step, StepGroup } from "../../protocol/protocol.ts";
import { showExact, showQuantity, showSpan } from "./protocolPageAmount.ts";
import type { DraftRow, DraftTable } from "./protocolPageTypes.ts";
import { capital, codeUnit, codeWords, valueWords } from "./protocolPageWords.ts";

function showBand({ at, inclusive }: AlertRule["bands"][number], { code, side }: AlertRule): string {
  const limit =
    typeof at === "number" ? showQuantity(at, codeUnit(code)) : `the ${at === "critical" ? "emergency limit" : at}`;
  return `${inclusive ? `At or ${side}` : capital(side)} ${limit}`;
}

function alertTable(rule: AlertRule): DraftTable {
  const { id, code, side, phases, bands, clearBy, clearReadings, worseBy, source } = rule;
  const unit = codeUnit(code);
  return {
    key: id,
    title: `${codeWords(code)}, ${side === "under" ? "low" : "high"}`,
    rows: [
      ...bands.map((band, i) => ({
        key: `bands.${i}`,
        label: showBand(band, rule),
        value: `${band.priority} priority`,
        source: band.source,
      })),
      {
        key: "clear",
        label: "Cleared",
        value: `${showQuantity(clearBy, unit)} or more ${side === "under" ? "above" : "below"} the mildest limit, ${showExact(clearReadings)} readings in a row`,
        source,
      },
      { key: "worse", label: "Said at once when worse by", value: showQuantity(worseBy, unit), source },
      ...(phases === undefined
        ? []
        : [{ key: "phases", label: "Only in the phases", value: phases.map(valueWords).join(", ") }]),
      { key: "id", label: "Named in the file", value: `${id}, watching ${code}` },
    ],
  };
}

export const alertTables = ({ alerts }: Protocol): readonly DraftTable[] => alerts.map(alertTable);

const classWords = (drugClasses: readonly string[]): string => drugClasses.map(valueWords).join(" or ");

function satisfiedWords(by: NonNullable<Step["satisfiedBy"]>): string {
  switch (by.kind) {
    case "map-at-target":
      return "by a mean pressure at its target";
    case "recorded":
      return `when ${by.codes.map(codeWords).join(", ")} are recorded${by.when === "any" ? "" : ` ${valueWords(by.when)}`}`;
    case "preoxygenated":
      return "when oxygen has run for its time";
    case "strength-affirmed":
      return `when the strength of a drug is affirmed: ${valueWords(by.drugClass)}${by.mostMl === undefined ? "" : `, in at most ${showExact(by.mostMl)} mL`}`;
    case "infusion-running":
      return `while an infusion runs: ${classWords(by.drugClasses)}`;
    case "fluid-given":
      return "when fluid or blood is given";
    case "etco2-in-band":
      return "by an EtCO2 in its band";
    case "airway":
      return `when ${valueWords(by.event)}`;
  }
}

function showStep({ name, killer, satisfiedBy, carries }: Step): string {
  const parts = [
    `called "${name}"`,
    killer ? "critical, waived only aloud" : "may be waived",
    satisfiedBy && `answered ${satisfiedWords(satisfiedBy)}`,
    carries && `takes ${carries.what}, ${showSpan(carries.low, carries.high, carries.unit)}`,
  ];
  return parts.filter((part) => part !== undefined).join("; ");
}

const groupTable = ({ id, title, steps }: StepGroup): DraftTable => ({
  key: id,
  title,
  rows: [
    ...steps.map((step) => ({
      key: `steps.${step.id}`,
      label: step.challenge,
      value: showStep(step),
      source: step.source,
    })),
    { key: "id", label: "Named in the file", value: `${id}; in this order ${steps.map((step) => step.id).join(", ")}` },
    { key: "title", label: "Read out as", value: title },
  ],
});

export const stepTables =
  (phase: StepGroup["phase"]) =>
  ({ groups }: Protocol): readonly DraftTable[] =>
    groups.filter((group) => group.phase === phase).map(groupTable);

/** Groups are read in the order of the file. */
export const groupOrder = ({ groups }: Protocol): readonly DraftRow[] => [
  {
    key: "groups",
    label: "Groups, in this order",
    value: groups.map(({ title, phase }) => `${title} (${valueWords(phase)})`).join(", "),
  },
];

function showConfirm({ actionEdges, soundAlike, jump }: ConfirmRule, unit: string): string {
  const edges = actionEdges.map(showExact).join(", ");
  const jumps = jump && `more than ${showQuantity(jump.by, unit)} within ${showQuantity(jump.withinS, "s")}`;
  return [
    edges === "" ? "no limit of action" : `limits of action ${edges}${unit === "" ? "" : `\u00a0${unit}`}`,
    `a sound-alike ${valueWords(soundAlike)}`,
    jumps === undefined ? "no jump" : `a jump of ${jumps}`,
  ].join("; ");
}

/** When a value is asked back. */
export const confirmRows = ({ confirm }: Protocol): readonly DraftRow[] =>
  (Object.entries(confirm) as [VitalCode, ConfirmRule | undefined][]).flatMap(([code, rule]) =>
    rule === undefined
      ? []
      : [{ key: code, label: codeWords(code), value: showConfirm(rule, codeUnit(code)), source: rule.source }],
  );
