import { describe, expect, it } from "vitest";
import { asInput, derive, type DerivationInput, type InputKind } from "../../src/core/derivation.ts";

const formula = {
  name: "sum",
  expression: "a + b",
  source: { reference: "definition", kind: "memory", primaryRead: false },
} as const;
const input = (kind: InputKind): DerivationInput => ({ name: "a", value: 1, unit: "mmHg", kind });
const made = (...kinds: readonly InputKind[]) =>
  derive({ formula, name: "c", value: 2, unit: "mmHg", inputs: kinds.map(input) });

describe("a result is as sure as its least sure input", () => {
  it.each([
    ["computed", ["measured", "measured"]],
    ["computed", ["computed", "protocol"]],
    ["computed", []],
    ["estimated", ["measured", "estimated"]],
    ["assumed", ["assumed", "measured"]],
    ["assumed", ["estimated", "assumed"]],
  ] as const)("%s from %j", (kind, kinds) => {
    expect(made(...kinds).result).toEqual({ name: "c", value: 2, unit: "mmHg", kind });
  });
});

it("keeps the formula, every input, the target and the parts", () => {
  const part = made("measured");
  const against = input("protocol");
  const whole = derive({ formula, name: "d", value: 3, unit: "", inputs: [asInput(part)], against, parts: [part] });
  expect(whole).toEqual({
    formula,
    result: { name: "d", value: 3, unit: "", kind: "computed" },
    inputs: [{ name: "c", value: 2, unit: "mmHg", kind: "computed" }],
    against,
    parts: [part],
  });
});

it("has no target and no parts where none were given", () => {
  expect(made("measured")).toMatchObject({ against: undefined, parts: [] });
});
