import type { VitalCode } from "../core/vitals.ts";
import { sayClocks } from "../language/sentences/clock.ts";
import { sayEverything, type Everything, type OffTarget } from "../language/sentences/everything.ts";
import { sayDrugTotal } from "../language/sentences/given.ts";
import { sayInfusion } from "../language/sentences/infusion.ts";
import { sayMargin, type Saturation } from "../language/sentences/margin.ts";
import { sayWatched } from "../language/sentences/alertNumber.ts";
import { sayAge } from "../language/sentences/vital.ts";
import type { CaseState, VitalEntry } from "../log/caseState.ts";
import type { FindingValue, Statement } from "../log/facts.ts";
import { selectPerfusion } from "../log/perfusion.ts";
import { selectFinding, selectLatest } from "../log/selectors.ts";
import { selectTargets } from "../log/targets.ts";
import { selectTotals } from "../log/totals.ts";
import { findMedicine } from "../protocol/findMedicine.ts";
import type { Protocol, WatchedCode } from "../protocol/protocol.ts";
import { standingAlerts } from "../rules/alerts/standing.ts";
import { clocksRunning } from "../rules/clocks.ts";

/** In the order in which they are told; pressures are in the status, what the patient weighs is not asked for. */
const TOLD = ["spo2", "hr", "etco2", "rr", "icp", "temp", "glucose"] as const satisfies VitalCode[];
const FINDINGS = [
  "pupilLeft",
  "pupilRight",
  "gcsEye",
  "gcsVerbal",
  "gcsMotor",
] as const satisfies FindingValue["code"][];

function saturation(log: CaseState, protocol: Protocol): Saturation | undefined {
  const latest = selectLatest(log, "spo2");
  return latest && { spo2Pct: latest.value, targetPct: selectTargets(log, protocol).spo2Pct.target.value };
}

function offTarget(log: CaseState, protocol: Protocol, nowMs: number): readonly OffTarget[] {
  const [spo2, etco2] = [selectLatest(log, "spo2"), selectLatest(log, "etco2")];
  const sats = saturation(log, protocol);
  const range = selectTargets(log, protocol).etco2MmHg;
  const isOutside = etco2 !== undefined && (etco2.value < range.low || etco2.value > range.high);
  return [
    ...(spo2 !== undefined && sats !== undefined && sats.spo2Pct < sats.targetPct
      ? [{ kind: "spo2" as const, ...sats, ageMs: nowMs - spo2.atMs }]
      : []),
    ...(isOutside ? [{ kind: "etco2" as const, value: etco2, range, ageMs: nowMs - etco2.atMs }] : []),
  ];
}

type Dated = { readonly atMs: number; readonly vital?: VitalEntry; readonly finding?: FindingValue };

/** A finding that is newer than the number is what was seen last. */
function seen(log: CaseState, code: FindingValue["code"]): readonly Dated[] {
  const finding = selectFinding(log, code);
  if (finding !== undefined) return [{ atMs: finding.atMs, finding }];
  const vital = selectLatest(log, code);
  return vital === undefined ? [] : [{ atMs: vital.atMs, vital }];
}

/** What is left to tell, those of one spoken age together. */
function others(log: CaseState, told: readonly VitalCode[], nowMs: number): Everything["others"] {
  const rest = TOLD.filter((code) => !told.includes(code));
  const dated: readonly Dated[] = [
    ...rest.flatMap((code) => {
      const vital = selectLatest(log, code);
      return vital === undefined ? [] : [{ atMs: vital.atMs, vital }];
    }),
    ...FINDINGS.flatMap((code) => seen(log, code)),
  ];
  const ages = [...new Set(dated.map(({ atMs }) => sayAge(nowMs - atMs)))];
  return ages.map((age) => {
    const group = dated.filter(({ atMs }) => sayAge(nowMs - atMs) === age);
    const statement: Statement = {
      vitals: group.flatMap(({ vital }) => vital ?? []),
      findings: group.flatMap(({ finding }) => finding ?? []),
    };
    return { ...statement, ageMs: Math.max(...group.map(({ atMs }) => nowMs - atMs)) };
  });
}

/** These are said with how far they are under their target; a bound of CPP stands in the status. */
const SAID_UNDER: readonly WatchedCode[] = ["map", "cpp", "cppBound", "spo2"];

/** Alerts that what is said before does not speak of; those on values that are back at target too. */
function alertsLeft(log: CaseState, protocol: Protocol, nowMs: number): readonly string[] {
  const left = standingAlerts(log, protocol, nowMs).flatMap(({ body }) => {
    if (body.kind !== "limit") return [];
    const isTold = SAID_UNDER.includes(body.code) && body.beyond > 0;
    return isTold ? [] : [sayWatched(body.code, "computed")];
  });
  return [...new Set(left)];
}

/** How far the pressures are from their targets, and sats where they are under theirs. */
export const tellMargin = (protocol: Protocol, log: CaseState, nowMs: number): string =>
  sayMargin(selectPerfusion(log, protocol, nowMs), saturation(log, protocol));

/** The whole state of the case, in the order in which it matters. */
export function tellEverything(protocol: Protocol, log: CaseState, nowMs: number): string {
  const nameOf = (drugId: string): string => findMedicine(protocol, drugId)?.spokenName ?? drugId;
  const off = offTarget(log, protocol, nowMs);
  const clocks = clocksRunning(log, protocol, nowMs);
  const running = Object.entries(log.care.infusions).filter(([, { rate }]) => rate.value > 0);
  return sayEverything(
    {
      perfusion: selectPerfusion(log, protocol, nowMs),
      offTarget: off,
      alerts: alertsLeft(log, protocol, nowMs),
      infusions: running.map(([drugId, { rate, mlPerH }]) => sayInfusion(nameOf(drugId), { rate, mlPerH }, undefined)),
      others: others(
        log,
        off.map(({ kind }) => kind),
        nowMs,
      ),
      clocks: clocks.length === 0 ? undefined : sayClocks(clocks, nowMs),
      totals: selectTotals(log).map(({ drugId, total }) => sayDrugTotal(nameOf(drugId), total)),
    },
    protocol.region,
  );
}
