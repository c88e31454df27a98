import type { Row } from "./caseRows.ts";

/** Answers to steps with what they carry: values, roles, reasons. Invented. */
export const STEP_ANSWER_CASES: Readonly<Record<string, readonly Row[]>> = {
  "an answer carries its value": [
    ["tube eight point zero", "recorded", "step tube done", "Tube: eight point zero."],
    ["supraglottic size four", "recorded", "step supraglottic done", "Supraglottic device: four."],
    [
      "pressor running at five",
      "recorded",
      "step pressorInfusion done",
      "Pressor infusion: five millilitres per hour.",
    ],
    ["stop saturation ninety", "recorded", "step stopSaturation done", "Stop saturation: ninety, nine zero, percent."],
    ["stop saturation nine one", "recorded", "step stopSaturation done", "Stop saturation: ninety one percent."],
    ["attempt limit two", "recorded", "step attemptLimit done", "Attempt limit: two."],
    ["tube seven", "recorded", "step tube done", "Tube: seven point zero."],
  ],
  "a value outside the limits of the step is refused": [
    ["next", "answered", "called bleeding", "Bleeding stopped, pelvis bound if suspected?"],
    ["bleeding stopped", "recorded", "step bleeding done", "Bleeding: done."],
    ["tube ready", "asked", "step tube done, asked always-confirm", "Tube: done. Tube size?"],
    ["ten", "refused", "", "Tube size ten point zero: outside two point five to nine point zero. Say it again."],
    ["seven point five", "recorded", "closed restated, step tube done", "Tube: seven point five."],
  ],
  "a value that is missing is asked for once": [
    ["read the list", "answered", "list all, called bleeding", "Bleeding stopped, pelvis bound if suspected?"],
    ["tube ready", "asked", "step tube done, asked always-confirm", "Tube: done. Tube size?"],
    ["done", "answered", "closed unconfirmed, called bleeding", "Tube: done. Back to bleeding."],
    ["tube ready", "asked", "step tube done, asked always-confirm", "Tube: done. Tube size?"],
    ["sats ninety six", "recorded", "spo2 96", "Sats ninety six."],
    ["negative", "answered", "closed denied, called bleeding", "No value. Back to bleeding."],
    ["done", "recorded", "step bleeding done, called meanPressure", "Bleeding: done. Mean pressure at target?"],
  ],
  "a number that could be another is asked back, and digits settle it": [
    ["oxygen ready", "asked", "step preoxygenation done, asked always-confirm", "Oxygen: done. Minutes of oxygen?"],
    ["fifteen", "asked", "closed restated, asked sound-alike", "Oxygen: fifteen, one five, minutes?"],
    ["five zero", "recorded", "closed restated, step preoxygenation done", "Oxygen: fifty, five zero, minutes."],
    ["oxygen ready", "asked", "step preoxygenation done, asked always-confirm", "Oxygen: done. Minutes of oxygen?"],
    ["fifteen", "asked", "closed restated, asked sound-alike", "Oxygen: fifteen, one five, minutes?"],
    ["fifteen", "recorded", "closed affirmed, step preoxygenation done", "Oxygen: fifteen, one five, minutes."],
  ],
  "a number that was asked back and denied": [
    ["pressor trigger one fifteen", "asked", "asked sound-alike", "Pressor trigger: one fifteen, one one five?"],
    ["negative", "answered", "closed denied", "Not done. Say it again."],
    [
      "pressor trigger one one five",
      "recorded",
      "step pressorTrigger done",
      "Pressor trigger: one fifteen, one one five.",
    ],
  ],
  "a correction means the value entered last": [
    ["sats ninety six", "recorded", "spo2 96", "Sats ninety six."],
    ["tube eight", "recorded", "step tube done", "Tube: eight point zero."],
    ["correction seven point five", "recorded", "step tube done", "Tube: seven point five."],
    ["disregard", "recorded", "struck 1", "Disregarded: Tube: seven point five. Tube: eight point zero."],
    ["disregard", "recorded", "struck 1", "Disregarded: Tube: eight point zero. The step is open again."],
    ["correction nine five", "recorded", "struck 1, spo2 95", "Sats ninety five."],
  ],
  "a quantity with its unit answers the step, once it is affirmed": [
    ["push dose ready", "asked", "step pushDose done, asked always-confirm", "Push dose: done. Concentration?"],
    [
      "one hundred micrograms per mil",
      "asked",
      "closed restated, asked always-confirm",
      "Push dose: one hundred, one zero zero, micrograms per millilitre?",
    ],
    [
      "affirm",
      "recorded",
      "closed affirmed, step pushDose done",
      "Push dose: one hundred, one zero zero, micrograms per millilitre.",
    ],
    [
      "disregard",
      "recorded",
      "struck 1",
      "Disregarded: Push dose: one hundred, one zero zero, micrograms per millilitre. Push dose: done.",
    ],
  ],
  "who does it is kept by role": [
    ["second medic calls pressure", "recorded", "step whoCallsPressure done", "Second medic calls pressure."],
    ["first doctor intubates", "recorded", "step whoIntubates done", "First doctor intubates."],
    ["disregard", "recorded", "struck 1", "Disregarded: First doctor intubates. The step is open again."],
  ],
  "why it is not needed is kept": [
    [
      "osmotic not needed not indicated",
      "recorded",
      "step osmotic not-needed",
      "Osmotic drug: not needed, not indicated.",
    ],
    [
      "push dose not needed no time",
      "recorded",
      "step pushDose not-needed",
      "Critical step not needed, no time: push dose.",
    ],
    ["next", "answered", "called bleeding", "Bleeding stopped, pelvis bound if suspected?"],
    ["not needed not possible", "recorded", "step bleeding not-needed", "Bleeding: not needed, not possible."],
  ],
};
