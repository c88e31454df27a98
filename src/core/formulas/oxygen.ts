import type { Formula, Source } from "../derivation.ts";
import { COMMON_PRACTICE, STANDARD_FORM } from "./sources.ts";

const SEVERINGHAUS: Source = {
  reference:
    "Severinghaus JW. Simple, accurate equations for human blood O2 dissociation computations. J Appl Physiol 1979;46:599-602. doi:10.1152/jappl.1979.46.3.599",
  kind: "textbook",
  primaryRead: true,
};

/** How each result about oxygen is worked out, by the name of its function. */
export const oxygenFormulas = {
  alveolarOxygen: {
    name: "alveolar oxygen pressure",
    expression: "FiO2 × (PB − 47) − PaCO2 × [FiO2 + (1 − FiO2) / 0.8]",
    source: STANDARD_FORM,
  },
  shortAlveolarOxygen: {
    name: "alveolar oxygen pressure, short form",
    expression: "FiO2 × (PB − 47) − PaCO2 / 0.8",
    source: STANDARD_FORM,
  },
  saturationAtPo2: {
    name: "saturation from oxygen pressure",
    expression: "1 / (23400 / (PO2³ + 150 × PO2) + 1)",
    source: SEVERINGHAUS,
  },
  po2AtSaturation: {
    name: "oxygen pressure from saturation",
    expression: "exp(0.385 × ln(S / (1 − S)) + 3.32 − 1 / (72 × S) − 0.17 × S⁶)",
    source: SEVERINGHAUS,
  },
  residualCapacity: {
    name: "functional residual capacity",
    expression: "mL/kg × weight",
    source: COMMON_PRACTICE,
  },
  apnoeaStore: {
    name: "oxygen store of the lungs",
    expression: "FRC × (FAO2 at start − FAO2 at end)",
    source: STANDARD_FORM,
  },
  apnoeaTime: { name: "time to use the oxygen store", expression: "store / VO2", source: STANDARD_FORM },
  freeGas: { name: "gas in the cylinder", expression: "gauge pressure × water volume", source: COMMON_PRACTICE },
  cylinderEndurance: {
    name: "cylinder endurance",
    expression: "(contents − reserve × full contents) / flow",
    source: COMMON_PRACTICE,
  },
} as const satisfies Record<string, Formula>;
