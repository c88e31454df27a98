import { toJsonSchema } from "@valibot/to-json-schema";
import { Ajv, type SchemaObject } from "ajv";
import { expect, it } from "vitest";
import json from "../../src/protocol/defaultProtocol.json" with { type: "json" };
import { protocolSchema } from "../../src/protocol/schema/protocolSchema.ts";
import { minimalProtocol } from "./fixtures/minimalProtocol.ts";
import { withValue } from "./fixtures/withValue.ts";

const { $schema, ...shape } = toJsonSchema(protocolSchema, {
  typeMode: "input",
  // What JSON cannot hold anyway, and what only changes the reading.
  ignoreActions: ["finite", "trim"],
});
const schema = {
  $schema,
  title: "Tragus protocol file, schema 3",
  description:
    "The shape of a protocol file. What its numbers must be to one another is checked when it is loaded: a file that fits this may still be refused.",
  ...shape,
};

it("is the one that is published", async () => {
  await expect(`${JSON.stringify(schema, null, 2)}\n`).toMatchFileSnapshot("../../public/protocol.schema.json");
});

const ajv = new Ajv({ allErrors: true, formats: { date: /^\d{4}-\d{2}-\d{2}$/ } });
const fits = ajv.compile(schema as SchemaObject);

it.each([
  ["the built-in file", json],
  ["the small file of the tests", minimalProtocol()],
])("another validator accepts %s", (_name, file) => {
  fits(file);
  expect(fits.errors).toBeNull();
});

it.each<readonly [string, unknown]>([
  ["schema", 2],
  ["owner", ""],
  ["date", "yesterday"],
  ["colour", "red"],
  ["targets.spo2Pct.target.value", "90"],
  ["targets.spo2Pct.target.value", undefined],
  ["targets.populations", []],
  ["targets.populations[0].sbpMmHg.target.value", { base: 70 }],
  ["alerts[0].code", "rr"],
  ["alerts[0].bands", []],
  ["alerts[0].clearReadings", 0],
  ["alerts[0].clearReadings", 1.5],
  ["groups[0].steps[1].satisfiedBy.codes", ["pulse"]],
  ["groups[0].steps[1].satisfiedBy", { kind: "recorded" }],
  ["groups[0].steps[1].name", undefined],
  ["groups[1].phase", "later"],
  ["groups[1].steps[1].satisfiedBy.drugClass", "poison"],
  ["timers.watch.stretchBy.value", 1],
  ["drugs[0].doses[0].low", 0],
  ["drugs[0].doses[0].unit", "grains"],
  ["drugs[0].doses[0].source.primaryRead", "yes"],
  ["oxygen.cylinderReserveFraction.value", 1],
  ["confirm.lactate", {}],
])("another validator refuses %s = %j", (path, value) => {
  expect(fits(withValue<unknown>(minimalProtocol(), path, value))).toBe(false);
});
