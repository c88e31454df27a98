import type { Formula, Source } from "../derivation.ts";
import { fromMemory } from "./sources.ts";

const GCS_P: Source = {
  reference: "Brennan PM, Murray GD, Teasdale GM. GCS-Pupils score. J Neurosurg 2018",
  kind: "trial",
  primaryRead: true,
};

/** By the name of the function in `src/core`. */
export const neuroFormulas = {
  gcsTotal: {
    name: "Glasgow coma scale",
    expression: "eye + verbal + motor",
    source: fromMemory("Glasgow coma scale"),
  },
  gcsPupils: { name: "Glasgow coma scale with pupils", expression: "GCS − PRS", source: GCS_P },
  pupilReactivityScore: { name: "pupil reactivity score", expression: "number of fixed pupils", source: GCS_P },
  pupilDifference: {
    name: "difference of the pupils",
    expression: "larger pupil − smaller pupil",
    source: fromMemory("definition"),
  },
  ichScore: {
    name: "ICH score",
    expression:
      "GCS (3 to 4: 2, 5 to 12: 1) + 30 mL or more (1) + intraventricular (1) + infratentorial (1) + 80 years or more (1)",
    source: {
      reference: "Hemphill JC et al. The ICH score. Stroke 2001",
      kind: "trial",
      primaryRead: false,
    },
  },
  haematomaVolume: { name: "haematoma volume", expression: "A × B × C / 2", source: fromMemory("the ABC/2 form") },
} as const satisfies Record<string, Formula>;
