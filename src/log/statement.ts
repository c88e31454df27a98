import type { Sex } from "../core/bodySize.ts";
import type { PupilReaction } from "../core/pupils.ts";
import type { UcumUnit, VitalCode } from "../core/vitals.ts";
import type { Cause } from "../protocol/protocol.ts";

/** A unit as a person says it. The stored unit is fixed per vital (`VITALS`); this is what was spoken. */
export type SaidUnit =
  | "mmHg"
  | "kPa"
  | "cmH2O"
  | "/min"
  | "%"
  | "Cel"
  | "degF"
  | "mmol/L"
  | "mg/dL"
  | "mm"
  | "kg"
  | "lb"
  | "cm"
  | "in"
  | "a"
  | "mo"
  | "{score}";

/** How a value was had. `estimated`: a weight or height that nobody measured. */
export type Method = "cuff" | "arterial" | "palpated" | "estimated";
/** Where a temperature or a pressure was taken. */
export type Site =
  "left arm" | "right arm" | "left leg" | "right leg" | "tympanic" | "oesophageal" | "rectal" | "bladder" | "skin";
/** The height at which a pressure transducer was zeroed. */
export type Level = "tragus" | "heart";

/** One value in its canonical unit, with what was said kept beside it. */
export type VitalValue = {
  readonly code: VitalCode;
  readonly value: number;
  readonly unit: UcumUnit;
  readonly said: { readonly value: number; readonly unit: SaidUnit; readonly words: string };
  readonly method?: Method;
  readonly site?: Site;
  readonly level?: Level;
  readonly reaction?: PupilReaction;
};

/** Something observed that has no number. */
export type FindingValue =
  | { readonly code: "pupilLeft" | "pupilRight"; readonly finding: PupilReaction }
  | { readonly code: "gcsEye" | "gcsVerbal" | "gcsMotor"; readonly finding: "not-testable" };

/** What one statement says once its units are settled. A question holds one or more of these. */
export type Statement = {
  readonly vitals: readonly VitalValue[];
  readonly findings: readonly FindingValue[];
  readonly sex?: Sex;
  /** Why ICP is raised. */
  readonly cause?: Cause;
  /** Herniation is suspected or being treated; false: it is not, or no longer. */
  readonly herniation?: boolean;
};
