import { minimalProtocol } from "../fixtures/minimalProtocol.ts";
import type { CheckRows } from "./checkRow.ts";

const DOSE = "drugs[0].doses[0]";
const OSMOTIC = "osmotics[0].doses[0]";
const INFUSION = "drugs[1].infusions[0]";
const RECIPE = "drugs[1].recipes[0]";

/** Faults of drugs, fluids and osmotic agents. */
export const medicineRows: CheckRows = {
  names: [
    [[["drugs[1].id", "ketamine"]], ['drugs[1].id: the agent "ketamine" is used at drugs[0].id already']],
    [[["osmotics[0].id", "crystalloid"]], ['osmotics[0].id: the agent "crystalloid" is used at fluids[0].id already']],
    [
      [["drugs[1].spoken[1]", " Ketamine "]],
      ['drugs[1].spoken[1]: the spoken form "ketamine" is used at drugs[0].spoken[0] already'],
    ],
    [
      [["drugs[1].spoken[1]", "noradrenaline"]],
      ['drugs[1].spoken[1]: the spoken form "noradrenaline" is used at drugs[1].spoken[0] already'],
    ],
    [
      [["osmotics[0].spoken[0]", "norepinephrine"]],
      ['osmotics[0].spoken[0]: the spoken form "norepinephrine" is used at drugs[1].spoken[1] already'],
    ],
    [
      [
        ["drugs[0].spoken", ["k  two"]],
        ["drugs[1].spoken", ["k two"]],
      ],
      ['drugs[1].spoken[0]: the spoken form "k two" is used at drugs[0].spoken[0] already'],
    ],
  ],
  doses: [
    [[[`${DOSE}.usual`, 0.9]], [`${DOSE}.usual: 0.9 mg/kg is below the lowest dose of 1 mg/kg`]],
    [[[`${DOSE}.usual`, 1]], []],
    [[[`${DOSE}.high`, 1.4]], [`${DOSE}.high: 1.4 mg/kg is below the usual dose of 1.5 mg/kg`]],
    [[[`${DOSE}.high`, 1.5]], []],
    [[[`${DOSE}.shock.usual`, 0.4]], [`${DOSE}.shock.usual: 0.4 mg/kg is below the lowest dose of 0.5 mg/kg`]],
    [[[`${DOSE}.shock.high`, 0.7]], [`${DOSE}.shock.high: 0.7 mg/kg is below the usual dose of 0.75 mg/kg`]],
    [[[`${DOSE}.shock`, { low: 2, usual: 3, high: 4 }]], []],
    [[[`${OSMOTIC}.weight`, "actual"]], [`${OSMOTIC}.weight: has no meaning: the amount is not for each kilogram`]],
    // 2 kg is the lightest patient that is believed: 0.5 mg/kg in shock is 1 mg.
    [[[`${DOSE}.cap`, 0.9]], [`${DOSE}.cap: 0.9 mg is below the lowest dose of 1 mg`]],
    [[[`${DOSE}.cap`, 1]], []],
    [
      [
        [`${DOSE}.cap`, 4],
        [`${DOSE}.fromKg`, 10],
      ],
      [`${DOSE}.cap: 4 mg is below the lowest dose of 5 mg`],
    ],
    [[[`${OSMOTIC}.cap`, 19]], [`${OSMOTIC}.cap: 19 g is below the lowest dose of 20 g`]],
    [[[`${OSMOTIC}.cap`, 20]], []],
    [
      [
        [`${OSMOTIC}.shock`, { low: 15, usual: 20, high: 30 }],
        [`${OSMOTIC}.cap`, 15],
      ],
      [],
    ],
    [[[`${OSMOTIC}.minimum`, 61]], [`${OSMOTIC}.minimum: 61 g is above the highest dose of 60 g`]],
    [[[`${OSMOTIC}.minimum`, 60]], []],
    [
      [
        [`${OSMOTIC}.minimum`, 70],
        [`${OSMOTIC}.shock`, { low: 20, usual: 40, high: 70 }],
      ],
      [],
    ],
    [[[`${DOSE}.minimum`, 201]], [`${DOSE}.cap: 200 mg is below the minimum of 201 mg`]],
    [[[`${DOSE}.minimum`, 200]], []],
    [[[`${OSMOTIC}.belowKg`, 40]], [`${OSMOTIC}.belowKg: 40 kg is not above 40 kg, from where this dose counts`]],
    [[[`${OSMOTIC}.belowKg`, 41]], []],
    [[[`${DOSE}.overS`, { low: 2, high: 1 }]], [`${DOSE}.overS.high: 1 is below the low end of 2`]],
    [[[`${DOSE}.repeatAfterS`, { low: 2, high: 1 }]], [`${DOSE}.repeatAfterS.high: 1 is below the low end of 2`]],
    [[[`${DOSE}.mostDoses`, 1.5]], [`${DOSE}.mostDoses: must be a whole number, not 1.5`]],
    [[["drugs[0].onsetS.value", { low: 2, high: 1 }]], ["drugs[0].onsetS.value.high: 1 is below the low end of 2"]],
    [
      [["drugs[0].durationS.value", { low: 2, high: 1 }]],
      ["drugs[0].durationS.value.high: 1 is below the low end of 2"],
    ],
    [
      [["drugs[0].doses[1]", { ...minimalProtocol().drugs[0]?.doses[0] }]],
      ['drugs[0].doses[1].id: the id "induction" is used at drugs[0].doses[0].id already'],
    ],
  ],
  "infusions, strengths and solutions": [
    [[[`${INFUSION}.start`, 0.04]], [`${INFUSION}.start: 0.04 mcg/kg/min is below the lowest rate of 0.05 mcg/kg/min`]],
    [[[`${INFUSION}.high`, 0.09]], [`${INFUSION}.high: 0.09 mcg/kg/min is below the starting rate of 0.1 mcg/kg/min`]],
    [[[`${INFUSION}.weight`, undefined]], [`${INFUSION}.weight: is missing: the amount is for each kilogram`]],
    [[[`${INFUSION}.unit`, "mcg/min"]], [`${INFUSION}.weight: has no meaning: the amount is not for each kilogram`]],
    [
      [["drugs[0].concentrations[0].unit", "units"]],
      ["drugs[0].concentrations[0].unit: a strength in units cannot give what is ordered in mg"],
    ],
    [[["drugs[0].concentrations[0].unit", "mcg"]], []],
    [
      [["drugs[0].concentrations[0].unit", "mL"]],
      ["drugs[0].concentrations[0].unit: a strength is an amount in a volume: must not be mL"],
    ],
    [
      [["drugs[1].concentrations[0].unit", "mmol"]],
      ["drugs[1].concentrations[0].unit: a strength in mmol cannot give what is ordered in mcg/kg/min"],
    ],
    [
      [
        ["drugs[0].doses", []],
        ["drugs[0].concentrations[0].unit", "units"],
      ],
      [],
    ],
    [[[`${OSMOTIC}.unit`, "units"]], [`${OSMOTIC}.unit: a solution is not ordered in units of activity`]],
    [
      [["osmotics[0].infusions", [{ ...minimalProtocol().drugs[1]?.infusions[0], unit: "units/h", id: "bolus" }]]],
      [
        'osmotics[0].infusions[0].id: the id "bolus" is used at osmotics[0].doses[0].id already',
        "osmotics[0].infusions[0].unit: a solution is not ordered in units of activity",
        "osmotics[0].infusions[0].weight: has no meaning: the amount is not for each kilogram",
      ],
    ],
    [[["fluids[0].adultMl.value.high", 1]], ["fluids[0].adultMl.value.high: 1 is below the low end of 250"]],
    [[["fluids[0].childMlPerKg.value.high", 1]], ["fluids[0].childMlPerKg.value.high: 1 is below the low end of 10"]],
  ],
  recipes: [
    [[[`${RECIPE}.makes.amount`, 4040]], []],
    [[[`${RECIPE}.makes.amount`, 4041]], [`${RECIPE}.makes.amount: 4041 mcg is not what 4 mL of the stock hold: 4 mg`]],
    [[[`${RECIPE}.makes.amount`, 3900]], [`${RECIPE}.makes.amount: 3900 mcg is not what 4 mL of the stock hold: 4 mg`]],
    [[[`${RECIPE}.makes.unit`, "mg"]], [`${RECIPE}.makes.amount: 4000 mg is not what 4 mL of the stock hold: 4 mg`]],
    [
      [[`${RECIPE}.makes.volumeMl`, 254]],
      [`${RECIPE}.makes.volumeMl: 254 mL is not what 4 mL and 246 mL make: 250 mL`],
    ],
    [[[`${RECIPE}.makes.unit`, "units"]], [`${RECIPE}.makes.unit: units cannot be made from mg`]],
    [[[`${RECIPE}.stock.unit`, "mL"]], [`${RECIPE}.stock.unit: a strength is an amount in a volume: must not be mL`]],
    [[[`${RECIPE}.for`, "syringe"]], [`${RECIPE}.for: nothing of this drug is given at once: a syringe needs a dose`]],
    [
      [
        [`${RECIPE}.for`, "syringe"],
        ["drugs[1].doses", [{ ...minimalProtocol().drugs[0]?.doses[0] }]],
      ],
      [],
    ],
    [[[`${RECIPE}.stock`, { amount: 1, unit: "g", volumeMl: 1000 }]], []],
  ],
};
