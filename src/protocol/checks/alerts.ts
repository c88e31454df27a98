import { VITALS } from "../../core/vitals.ts";
import { unique, when, type Faults, type Place } from "../fault.ts";
import { isWorse } from "../priority.ts";
import type { AlertRule, Protocol, WatchedCode } from "../protocol.ts";
import { endsOf, valueAt } from "./ages.ts";
import { highestMeanInHerniation } from "./herniation.ts";

/** To what cause and herniation may lift the target of a pressure. */
function raisedTargets({ causes, herniation, populations }: Protocol["targets"], code: WatchedCode): readonly number[] {
  if (code === "sbp") return [herniation.sbpMmHg.value, ...causes.map((c) => c.sbpRangeMmHg?.value.low ?? 0)];
  if (code !== "map") return [];
  return populations.map((p) => highestMeanInHerniation(p, herniation));
}

/** The highest number that the mildest band of an alert can have in any patient. */
function highestLimit({ targets }: Protocol, { code, bands }: AlertRule): number {
  const under = bands[0]?.under ?? "target";
  if (code === "spo2") return targets.spo2Pct[under].value;
  const floors = ({ populations }: Protocol["targets"]) =>
    populations.flatMap((p) => {
      const floor = { sbp: p.sbpMmHg, map: p.mapMmHg, cpp: p.cppMmHg }[code];
      return endsOf(p).map((ageA) => valueAt(floor[under].value, ageA));
    });
  return Math.max(...floors(targets), ...(under === "target" ? raisedTargets(targets, code) : []));
}

function checkBands({ bands }: AlertRule, at: Place): Faults {
  return bands.flatMap((band, i): Faults => {
    const milder = bands[i - 1];
    const here = [...at, "bands", i];
    return [
      ...when(
        band.under === "target" && band.inclusive,
        [...here, "inclusive"],
        "a value at its target has no deficit: must be false in a band under the target",
      ),
      ...when(
        milder !== undefined && !(milder.under === "target" && band.under === "critical"),
        [...here, "under"],
        "the band under the target comes first, then the one under the critical limit, each once",
      ),
      ...when(
        milder !== undefined && !isWorse(band.priority, milder.priority),
        [...here, "priority"],
        `${band.priority} is not worse than ${milder?.priority ?? ""}, the priority of the band before it`,
      ),
    ];
  });
}

function checkAlert(rule: AlertRule, at: Place, protocol: Protocol): Faults {
  const { max } = VITALS[rule.code === "cpp" ? "map" : rule.code].limits;
  const clearFrom = highestLimit(protocol, rule) + rule.clearBy;
  return [
    ...checkBands(rule, at),
    ...when(
      clearFrom > max,
      [...at, "clearBy"],
      `no value could clear this alert: it would have to reach ${clearFrom}, and ${max} is the highest that is believed`,
    ),
  ];
}

/** Alerts that can be told apart, get worse band by band, and can end. */
export function checkAlerts(protocol: Protocol): Faults {
  const { alerts } = protocol;
  return [
    ...unique(
      alerts.map(({ id }, i) => ({ name: id, at: ["alerts", i, "id"] })),
      "the alert",
    ),
    ...unique(
      alerts.map(({ code }, i) => ({ name: code, at: ["alerts", i, "code"] })),
      "an alert on",
    ),
    ...alerts.flatMap((rule, i) => checkAlert(rule, ["alerts", i], protocol)),
  ];
}
