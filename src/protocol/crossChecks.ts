import type { Limits } from "../core/quantity.ts";
import { VITALS, type VitalCode } from "../core/vitals.ts";
import { isWorse } from "./priority.ts";
import type { AlertRule, Protocol, WatchedCode } from "./protocol.ts";

/** One thing that is wrong with a protocol file, and where: "alerts.0.bands.1.below". */
export type ProtocolError = { readonly path: string; readonly message: string };

type Errors = readonly ProtocolError[];

const MOST_WORDS = 8;

const when = (wrong: boolean, path: string, message: string): Errors => (wrong ? [{ path, message }] : []);

/** CPP is not recorded but computed; its numbers must make sense as those of a mean pressure do. */
const limitsOf = (code: WatchedCode): Limits => VITALS[code === "cpp" ? "map" : code].limits;

function within(limits: Limits, value: number, path: string): Errors {
  const { min, max } = limits;
  return when(value < min || value > max, path, `must be within ${min} and ${max}`);
}

function unique(ids: readonly string[], path: string, what: string): Errors {
  return ids.flatMap((id, i) => when(ids.indexOf(id) < i, path, `${what} "${id}" is used twice`));
}

function checkBands(rule: AlertRule, target: number, path: string): Errors {
  const [mildest] = rule.bands;
  if (mildest === undefined) return [];
  const first = `${path}.bands.0.below`;
  const limits = limitsOf(rule.code);
  return [
    // Otherwise an alert could be raised that has no deficit to name.
    ...when(
      mildest.below > target || (mildest.inclusive && mildest.below === target),
      first,
      `must not reach above the target ${target}`,
    ),
    ...when(mildest.below + rule.clearBy > limits.max, `${path}.clearBy`, "no value could ever clear this alert"),
    ...rule.bands.flatMap((band, i) => {
      const milder = rule.bands[i - 1];
      return [
        ...within(limits, band.below, `${path}.bands.${i}.below`),
        ...when(
          milder !== undefined && band.below >= milder.below,
          `${path}.bands.${i}.below`,
          "must be below the milder band before it",
        ),
        ...when(
          milder !== undefined && !isWorse(band.priority, milder.priority),
          `${path}.bands.${i}.priority`,
          "must be worse than that of the band before it",
        ),
      ];
    }),
  ];
}

function checkAlerts({ alerts, targets }: Protocol): Errors {
  const target = { sbp: targets.sbpMmHg, map: targets.mapMmHg, cpp: targets.cppMmHg, spo2: targets.spo2Pct };
  return [
    ...within(limitsOf("sbp"), targets.sbpMmHg.value, "targets.sbpMmHg.value"),
    ...within(limitsOf("map"), targets.mapMmHg.value, "targets.mapMmHg.value"),
    ...within(limitsOf("cpp"), targets.cppMmHg.value, "targets.cppMmHg.value"),
    ...within(limitsOf("spo2"), targets.spo2Pct.value, "targets.spo2Pct.value"),
    ...unique(
      alerts.map((rule) => rule.id),
      "alerts",
      "id",
    ),
    ...unique(
      alerts.map((rule) => rule.code),
      "alerts",
      "code",
    ),
    ...alerts.flatMap((rule, i) => checkBands(rule, target[rule.code].value, `alerts.${i}`)),
  ];
}

function checkGroups({ groups }: Protocol): Errors {
  const ids = groups.flatMap((group) => group.steps.map((step) => step.id));
  return [
    ...unique(
      groups.map((group) => group.id),
      "groups",
      "id",
    ),
    ...unique(ids, "groups", "step id"),
    ...groups.flatMap((group, g) =>
      group.steps.flatMap((step, s) => {
        const count = step.challenge.trim().split(/\s+/).length;
        const path = `groups.${g}.steps.${s}.challenge`;
        return when(count > MOST_WORDS, path, `has ${count} words, at most ${MOST_WORDS} can be read out`);
      }),
    ),
  ];
}

function checkConfirm({ confirm }: Protocol): Errors {
  return (Object.keys(confirm) as VitalCode[]).flatMap((code) =>
    (confirm[code]?.actionEdges ?? []).flatMap((edge, i, edges) => {
      const path = `confirm.${code}.actionEdges.${i}`;
      const before = edges[i - 1];
      return [
        ...within(VITALS[code].limits, edge, path),
        ...when(before !== undefined && edge <= before, path, "must be above the edge before it"),
      ];
    }),
  );
}

function checkRest({ assumedIcpMmHg, timers }: Protocol): Errors {
  const { low, high } = assumedIcpMmHg.value;
  const { reannounceS } = timers;
  return [
    ...within(VITALS.icp.limits, low, "assumedIcpMmHg.value.low"),
    ...within(VITALS.icp.limits, high, "assumedIcpMmHg.value.high"),
    ...when(low > high, "assumedIcpMmHg.value", "low must not be above high"),
    ...when(
      reannounceS.high.value > reannounceS.medium.value || reannounceS.medium.value > reannounceS.low.value,
      "timers.reannounceS",
      "a worse priority must not wait longer",
    ),
  ];
}

/** What no single value shows: numbers that contradict one another or could never be said. Empty: all is well. */
export const crossCheck = (protocol: Protocol): Errors => [
  ...checkAlerts(protocol),
  ...checkGroups(protocol),
  ...checkConfirm(protocol),
  ...checkRest(protocol),
];
