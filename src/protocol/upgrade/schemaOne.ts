import * as v from "valibot";
import { count, notNegative, number, positive, priority, text, vitalCode } from "../schema/parts.ts";

const sourced = <S extends v.GenericSchema>(value: S) => v.strictObject({ value, source: text });

const band = v.strictObject({ below: number, inclusive: v.boolean(), priority, source: text });

const alert = v.strictObject({
  id: text,
  code: v.picklist(["sbp", "map", "cpp", "spo2"]),
  bands: v.pipe(v.array(band), v.nonEmpty("needs a band")),
  clearBy: notNegative,
  clearReadings: count,
  source: text,
});

const step = v.strictObject({
  id: text,
  challenge: text,
  killer: v.boolean(),
  satisfiedBy: v.exactOptional(
    v.variant("kind", [
      v.strictObject({ kind: v.literal("map-at-target") }),
      v.strictObject({
        kind: v.literal("recorded"),
        codes: v.pipe(v.array(vitalCode), v.nonEmpty("names no vital")),
      }),
    ]),
  ),
  source: text,
});

const confirm = v.strictObject({
  actionEdges: v.array(number),
  soundAlike: v.picklist(["always", "if-action-differs"]),
  jump: v.exactOptional(v.strictObject({ by: positive, withinS: positive })),
  source: text,
});

const codes = vitalCode.options;
const confirmRules = v.strictObject(
  Object.fromEntries(codes.map((code) => [code, v.exactOptional(confirm)])) as Record<
    (typeof codes)[number],
    v.ExactOptionalSchema<typeof confirm, undefined>
  >,
);

/** The first shape of a protocol file: one set of targets, for adults, and sources in free text. Never changed again. */
export const schemaOne = v.strictObject({
  schema: v.literal(1),
  name: text,
  version: text,
  owner: text,
  date: v.pipe(v.string(), v.isoDate("must be a date, year-month-day")),
  caution: text,
  targets: v.strictObject({
    mapMmHg: sourced(number),
    sbpMmHg: sourced(number),
    cppMmHg: sourced(number),
    spo2Pct: sourced(number),
  }),
  assumedIcpMmHg: sourced(v.strictObject({ low: number, high: number })),
  pressures: v.strictObject({ halvesWithinS: sourced(positive), apartMmHg: sourced(positive) }),
  alerts: v.array(alert),
  groups: v.array(v.strictObject({ id: text, title: text, steps: v.pipe(v.array(step), v.nonEmpty("needs a step")) })),
  confirm: confirmRules,
  timers: v.strictObject({
    questionTimeoutS: sourced(positive),
    staleAfterS: sourced(positive),
    standByS: sourced(positive),
    reannounceS: v.strictObject({ high: sourced(positive), medium: sourced(positive), low: sourced(positive) }),
  }),
});

export type FileOne = v.InferOutput<typeof schemaOne>;
