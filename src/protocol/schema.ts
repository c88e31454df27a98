import * as v from "valibot";
import { VITALS, type VitalCode } from "../core/vitals.ts";
import type { Protocol } from "./protocol.ts";

const text = v.pipe(v.string(), v.trim(), v.nonEmpty("must not be empty"));
const number = v.pipe(v.number(), v.finite());
const positive = v.pipe(number, v.gtValue(0, "must be above 0"));
const sourced = <S extends v.GenericSchema>(value: S) => v.strictObject({ value, source: text });
const priority = v.picklist(["high", "medium", "low"]);
const codes = Object.keys(VITALS) as [VitalCode, ...VitalCode[]];

const band = v.strictObject({ below: number, inclusive: v.boolean(), priority, source: text });

const alert = v.strictObject({
  id: text,
  code: v.picklist(["sbp", "map", "cpp", "spo2"]),
  bands: v.pipe(v.array(band), v.nonEmpty("needs a band")),
  clearBy: v.pipe(number, v.minValue(0, "must not be negative")),
  clearReadings: v.pipe(number, v.integer(), v.minValue(1, "must be 1 or more")),
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
        codes: v.pipe(v.array(v.picklist(codes)), v.nonEmpty("names no vital")),
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

const confirmEntries = Object.fromEntries(codes.map((code) => [code, v.exactOptional(confirm)])) as Record<
  VitalCode,
  v.ExactOptionalSchema<typeof confirm, undefined>
>;

/** The shape of a protocol file. Unknown keys are refused: a misspelt one would otherwise be silently without effect. */
export const protocolSchema: v.GenericSchema<unknown, Protocol> = v.strictObject({
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
  groups: v.array(v.strictObject({ id: text, title: text, steps: v.array(step) })),
  confirm: v.strictObject(confirmEntries),
  timers: v.strictObject({
    questionTimeoutS: sourced(positive),
    staleAfterS: sourced(positive),
    standByS: sourced(positive),
    reannounceS: v.strictObject({ high: sourced(positive), medium: sourced(positive), low: sourced(positive) }),
  }),
});
