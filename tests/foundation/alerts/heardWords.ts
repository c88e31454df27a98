import type { AlertCause } from "../../../src/rules/alerts/cause.ts";

/** What acknowledges everything of a cause; nothing does for the device but "heard" alone. */
export const HEARD_WORDS: Readonly<Record<AlertCause, string>> = {
  pressure: "heard pressure",
  oxygen: "heard sats",
  co2: "heard c o two",
  heartRate: "heard heart rate",
  temperature: "heard temp",
  glucose: "heard glucose",
  icp: "heard i c p",
  brain: "heard pupils",
  airway: "heard airway",
  drugs: "heard drugs",
  supplies: "heard cylinder",
  checks: "heard checks",
  device: "heard",
};
