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
