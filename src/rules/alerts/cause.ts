import type { WatchedCode } from "../../protocol/protocol.ts";
import type { Prompt } from "../prompts/prompt.ts";

/** What alerts and prompts are about. Those of one cause are said as one, and can be acknowledged by its name. */
export type AlertCause =
  | "pressure"
  | "oxygen"
  | "co2"
  | "heartRate"
  | "temperature"
  | "glucose"
  | "icp"
  | "brain"
  | "airway"
  | "drugs"
  | "supplies"
  | "checks"
  | "device";

/** What a watched value is about. */
export const CAUSE_OF_CODE: Readonly<Record<WatchedCode, AlertCause>> = {
  cpp: "pressure",
  cppBound: "pressure",
  map: "pressure",
  sbp: "pressure",
  spo2: "oxygen",
  etco2: "co2",
  hr: "heartRate",
  temp: "temperature",
  glucose: "glucose",
  icp: "icp",
};

export const CAUSE_OF_PROMPT: Readonly<Record<Prompt["promptId"], AlertCause>> = {
  stopAttempt: "oxygen",
  noCo2: "co2",
  attemptLimit: "airway",
  attempt: "airway",
  apnoea: "airway",
  preoxygenated: "airway",
  sedationDue: "drugs",
  pushDoseAgain: "drugs",
  rescueOver: "brain",
  hyperventilationOver: "brain",
  neuroDue: "brain",
  osmoticOver: "supplies",
  bagLow: "supplies",
  cylinderLow: "supplies",
  pressureDue: "checks",
  fullSetDue: "checks",
  stale: "checks",
  watchPhase: "checks",
};
