import type { Formula } from "../derivation.ts";
import { COMMON_PRACTICE, STANDARD_FORM } from "./sources.ts";

/** How each result about breathing and CO2 is worked out, by the name of its function. */
export const ventilationFormulas = {
  tidalVolume: { name: "tidal volume", expression: "mL/kg × predicted weight", source: COMMON_PRACTICE },
  tidalVolumeRange: { name: "tidal volume range", expression: "mL/kg × predicted weight", source: COMMON_PRACTICE },
  deadSpace: { name: "dead space", expression: "mL/kg × ideal weight", source: STANDARD_FORM },
  minuteVolume: { name: "minute volume", expression: "RR × VT", source: COMMON_PRACTICE },
  alveolarVentilation: { name: "alveolar ventilation", expression: "RR × (VT − VD)", source: STANDARD_FORM },
  rateForCo2: { name: "rate for the CO2 target", expression: "RR × PaCO2 / target PaCO2", source: STANDARD_FORM },
  rateForCo2AtVolume: {
    name: "rate for the CO2 target at the new tidal volume",
    expression: "RR × (VT − VD) / (new VT − VD) × PaCO2 / target PaCO2",
    source: STANDARD_FORM,
  },
  co2Gap: { name: "CO2 gap", expression: "PaCO2 − EtCO2", source: COMMON_PRACTICE },
  paco2FromEtco2: { name: "arterial CO2", expression: "EtCO2 + gap", source: COMMON_PRACTICE },
  cerebralFlowChange: {
    name: "change of cerebral blood flow",
    expression: "percent per mmHg × (PaCO2 after − PaCO2 before)",
    source: STANDARD_FORM,
  },
} as const satisfies Record<string, Formula>;
