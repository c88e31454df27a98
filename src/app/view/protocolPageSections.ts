import type { Protocol } from "../../protocol/protocol.ts";
import { drugTables, fluidTables, osmoticTables } from "./protocolPageDrugs.ts";
import { alertTables, confirmRows, groupOrder, stepTables } from "./protocolPageSteps.ts";
import { causeRows, populationTables, shockRows } from "./protocolPageTargets.ts";
import type { DraftRow, DraftSection, DraftTable } from "./protocolPageTypes.ts";
import { walkRows } from "./protocolPageWalk.ts";

type Rows = (protocol: Protocol) => readonly DraftRow[];
type Tables = (protocol: Protocol) => readonly DraftTable[];

const table =
  (title: string, ...rows: readonly Rows[]): Tables =>
  (protocol) => [{ key: title, title, rows: rows.flatMap((of) => of(protocol)) }];

/** One top group of the file, in the words of its keys. */
const all =
  (key: keyof Protocol): Rows =>
  (protocol) =>
    walkRows(protocol[key], [key]);

const target =
  (...keys: readonly (keyof Protocol["targets"])[]): Rows =>
  ({ targets }) =>
    keys.flatMap((key) => walkRows(targets[key], [key]));

const fileRows: Rows = ({ name, version, date, owner, status, caution, schema }) =>
  walkRows({ name, version, date, owner, status, caution, schema }, []);

type Heading = { readonly key: string; readonly title: string; readonly tables: readonly Tables[] };

/** In the order in which a clinician reads. */
const SECTIONS: readonly Heading[] = [
  { key: "file", title: "The file", tables: [table("The file", fileRows)] },
  { key: "ages", title: "Targets by age", tables: [populationTables] },
  { key: "causes", title: "Targets by cause", tables: [table("Targets by cause", causeRows)] },
  {
    key: "gases",
    title: "Oxygen and carbon dioxide",
    tables: [
      table("Targets", target("spo2Pct", "pao2MmHg", "etco2MmHg", "paco2MmHg")),
      table("Oxygen around intubation", all("oxygen")),
    ],
  },
  {
    key: "others",
    title: "Other targets and signs",
    tables: [
      table("Targets", target("tempCel", "glucoseMmolPerL", "sodiumMmolPerL", "osmolalityStopMosmPerKg")),
      table("Reading pressure", all("assumedIcpMmHg"), all("pressures"), all("lowPressure")),
      table("Shock index", shockRows),
      table("Signs of herniation", all("trend")),
    ],
  },
  { key: "alerts", title: "Alerts", tables: [alertTables, table("Other alerts", all("conditions"))] },
  { key: "prepare", title: "Preparation", tables: [stepTables("prepare")] },
  { key: "afterTube", title: "Once the tube is in", tables: [stepTables("afterTube")] },
  { key: "rescue", title: "While herniation is treated", tables: [stepTables("rescue")] },
  { key: "failedAirway", title: "When the airway has failed", tables: [stepTables("failedAirway")] },
  { key: "order", title: "Order", tables: [table("Order", groupOrder)] },
  { key: "drugs", title: "Drugs", tables: [drugTables] },
  { key: "fluids", title: "Fluids", tables: [fluidTables] },
  { key: "osmotics", title: "Osmotic agents", tables: [osmoticTables] },
  { key: "permissions", title: "Permissions", tables: [table("Permissions", all("permissions"))] },
  { key: "timers", title: "Timers", tables: [table("Timers", all("timers"))] },
  { key: "ventilation", title: "Ventilation", tables: [table("Ventilation", all("ventilation"))] },
  { key: "tubes", title: "Tubes", tables: [table("Tubes", all("tubes"))] },
  {
    key: "readBack",
    title: "Read-back and units",
    tables: [table("Read-back and units", all("readBack"), all("handover"), all("region"))],
  },
  { key: "confirm", title: "Asking back", tables: [table("Asking back", confirmRows, all("doses"))] },
];

/** Everything that one protocol file holds, as rows in words. */
export const draftSections = (protocol: Protocol): readonly DraftSection[] =>
  SECTIONS.map(({ key, title, tables }) => ({ key, title, tables: tables.flatMap((of) => of(protocol)) }));
