import { quantityOf } from "./quantity.ts";
import { spanOf } from "./vitals.ts";

// The checked doors into every unit but the millimetre of mercury, which has its own file. Limits are inclusive, reach from
// small children to the largest adult, and are this project's check against mishearing and slips of the unit, not
// clinical claims. Where vitals are stored in the unit, the limits are theirs; one vital's own door is `vitalQuantity`.

export const perMin = quantityOf<"/min">(spanOf("/min"));
/** Any percentage, not only a saturation. */
export const percent = quantityOf<"%">({ min: 0, max: 100 });
export const fraction = quantityOf<"fraction">({ min: 0, max: 1 });

/** A body weight. */
export const kg = quantityOf<"kg">(spanOf("kg"));
/** A body height: refuses one given in metres or in feet. */
export const cm = quantityOf<"cm">(spanOf("cm"));
/** The diameter of a pupil or of a tube. */
export const mm = quantityOf<"mm">(spanOf("mm"));
export const years = quantityOf<"years">(spanOf("a"));
export const cel = quantityOf<"Cel">(spanOf("Cel"));
export const mmolPerL = quantityOf<"mmol/L">(spanOf("mmol/L"));
/** A part of the Glasgow scale, its total, or the total less the pupils that do not react. */
export const score = quantityOf<"score">({ min: 0, max: 15 });

/** A gas pressure up to that of the air around. */
export const kPa = quantityOf<"kPa">({ min: 0, max: 110 });
/** An airway, cuff or drain pressure. */
export const cmH2O = quantityOf<"cmH2O">({ min: 0, max: 150 });

export const ml = quantityOf<"mL">({ min: 0, max: 20_000 });
export const l = quantityOf<"L">({ min: 0, max: 20 });
export const lPerMin = quantityOf<"L/min">({ min: 0, max: 100 });
export const mlPerMin = quantityOf<"mL/min">({ min: 0, max: 2000 });
export const mlPerKg = quantityOf<"mL/kg">({ min: 0, max: 100 });

/** Up to a day, which no case outlasts. */
export const minutes = quantityOf<"min">({ min: 0, max: 24 * 60 });
export const seconds = quantityOf<"s">({ min: 0, max: 24 * 60 * 60 });
