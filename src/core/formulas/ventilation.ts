import type { Formula, Source } from "../derivation.ts";

const MEMORY: Source = { reference: "standard form, from memory", kind: "memory", primaryRead: false };
const PRACTICE: Source = { reference: "common practice, no source", kind: "common-practice", primaryRead: false };

/** How each result about breathing and CO2 is worked out, by the name of its function. */
export const ventilationFormulas = {
  tidalVolume: { name: "tidal volume", expression: "mL/kg × predicted weight", source: PRACTICE },
  tidalVolumeRange: { name: "tidal volume range", expression: "mL/kg × predicted weight", source: PRACTICE },
  deadSpace: { name: "dead space", expression: "mL/kg × ideal weight", source: MEMORY },
  minuteVolume: { name: "minute volume", expression: "RR × VT", source: PRACTICE },
  alveolarVentilation: { name: "alveolar ventilation", expression: "RR × (VT − VD)", source: MEMORY },
  rateForCo2: { name: "rate for the CO2 target", expression: "RR × PaCO2 / target PaCO2", source: MEMORY },
  rateForCo2AtVolume: {
    name: "rate for the CO2 target at the new tidal volume",
    expression: "RR × (VT − VD) / (new VT − VD) × PaCO2 / target PaCO2",
    source: MEMORY,
  },
  co2Gap: { name: "CO2 gap", expression: "PaCO2 − EtCO2", source: PRACTICE },
  paco2FromEtco2: { name: "arterial CO2", expression: "EtCO2 + gap", source: PRACTICE },
  cerebralFlowChange: {
    name: "change of cerebral blood flow",
    expression: "percent per mmHg × (PaCO2 after − PaCO2 before)",
    source: MEMORY,
  },
} as const satisfies Record<string, Formula>;
