import type { Derivation, DerivationInput, InputKind } from "../../core/derivation.ts";
import type { Explanation } from "../../log/why/explanation.ts";
import { showAmount } from "./number.ts";
import { showSource } from "./source.ts";
import { showAge } from "./vital.ts";

/** One number of a derivation as the screen prints it. */
export type WhyLine = { readonly label: string; readonly text: string; readonly sourceText: string };

const KIND_SHOWN: Readonly<Record<InputKind, string>> = {
  measured: "measured",
  computed: "computed",
  assumed: "assumed",
  estimated: "estimated",
  protocol: "from the protocol",
};

const showNamed = ({ value, unit }: Pick<DerivationInput, "value" | "unit">): string =>
  unit === "" ? showAmount(value) : `${showAmount(value)} ${unit}`;

function inputLine(input: DerivationInput, nowMs: number): WhyLine {
  const age = input.atMs === undefined ? "" : `, ${showAge(nowMs - input.atMs)}`;
  const path = input.path === undefined ? "" : `, ${input.path}`;
  return {
    label: input.name,
    text: `${showNamed(input)}, ${KIND_SHOWN[input.kind]}${age}${path}`,
    sourceText: input.source === undefined ? "" : showSource(input.source),
  };
}

function derivationLines({ formula, result, inputs, against, parts }: Derivation, nowMs: number): readonly WhyLine[] {
  return [
    {
      label: result.name,
      text: `${showNamed(result)}, ${result.kind}: ${formula.expression}`,
      sourceText: `${formula.name}: ${showSource(formula.source)}`,
    },
    ...inputs.map((input) => inputLine(input, nowMs)),
    ...(against === undefined ? [] : [inputLine(against, nowMs)]),
    ...parts.flatMap((part) => derivationLines(part, nowMs)),
  ];
}

/** The whole derivation, line by line: the result and its formula, every input with its age and kind, the target. */
export function showWhy(explanation: Explanation, nowMs: number): readonly WhyLine[] {
  if (explanation.kind === "derived") return derivationLines(explanation.derivation, nowMs);
  const { input, against } = explanation;
  return [inputLine(input, nowMs), ...(against === undefined ? [] : [inputLine(against, nowMs)])];
}
