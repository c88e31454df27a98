import type { Formula, Source } from "../derivation.ts";
import { COMMON_PRACTICE, fromMemory } from "./sources.ts";

const TUBE_EXPLAINER: Source = {
  reference: "Explainer on paediatric tube size: Cole's rule, and 3.5 mm for cuffed tubes after Duracher",
  kind: "textbook",
  primaryRead: false,
};

/** By the name of the function in `src/core`. */
export const bodyFormulas = {
  idealWeight: {
    name: "ideal weight",
    expression: "50 (men) or 45.5 (women) + 2.3 × (height in inches − 60)",
    source: fromMemory("Devine BJ, 1974, the inch form"),
  },
  predictedWeight: {
    name: "predicted weight",
    expression: "50 (men) or 45.5 (women) + 0.91 × (height in cm − 152.4)",
    source: fromMemory("ARDS Network, the centimetre form"),
  },
  leanWeight: {
    name: "lean weight",
    expression: "9270 × TBW / (6680 + 216 × BMI) (men) or 9270 × TBW / (8780 + 244 × BMI) (women)",
    source: fromMemory("Janmahasatian S et al., 2005"),
  },
  adjustedWeight: { name: "adjusted weight", expression: "IBW + 0.4 × (TBW − IBW)", source: COMMON_PRACTICE },
  bodyMassIndex: { name: "body mass index", expression: "weight / height²", source: fromMemory("definition") },
  weightByAge: {
    name: "weight estimated by age",
    expression: "0.5 × months + 4 (under 1 year), 2 × years + 8 (1 to 5), 3 × years + 7 (6 to 12)",
    source: {
      reference: "APLS formulas, printed by Marikar D. BMJ Innov 2015. doi:10.1136/bmjinnov-2015-000059",
      kind: "textbook",
      primaryRead: true,
    },
  },
  olderWeightByAge: {
    name: "weight by the older rule",
    expression: "2 × (years + 4)",
    source: {
      reference:
        "Luscombe and Owens group. Weight = 3(age)+7. Emerg Med J 2011;28:590-593. doi:10.1136/emj.2009.087288",
      kind: "trial",
      primaryRead: true,
    },
  },
  tubeSizeByAge: { name: "tube size by age", expression: "age / 4 + plus", source: TUBE_EXPLAINER },
  nearestTube: {
    name: "tube size",
    expression: "nearest half millimetre, the smaller if halfway",
    source: COMMON_PRACTICE,
  },
  spareTubes: { name: "spare tubes", expression: "ID − step, ID + step", source: TUBE_EXPLAINER },
  tubeDepthByAge: {
    name: "tube depth by age",
    expression: "age / 2 + plus",
    source: fromMemory("depth at the lip by age"),
  },
  tubeDepthBySize: {
    name: "tube depth by size",
    expression: "3 × ID",
    source: { reference: "Paediatrics teaching page on tube depth", kind: "textbook", primaryRead: true },
  },
} as const satisfies Record<string, Formula>;
