/**
 * Teen and ty in every slot: a statement with N in place of the number word, and which of the fourteen words have it asked
 * back when it is heard as clearly as can be. "teens" and "tys" are all of them that the language admits there; "-" none.
 *
 * They are asked back where their pair is a value of the same vital that would lead to another action (the edges in the
 * protocol file; a vital without edges always), and where they are no likely value themselves. Worked out by hand.
 */
export const TEEN_TY_ROWS: readonly (readonly [said: string, asked: string])[] = [
  // 90 over 17 and 19 over 90 are no pressures: only the implausible one is asked back.
  ["systolic N", "teens"],
  ["N over palp", "teens"],
  ["one sixty five over N", "teens"],
  ["diastolic N", "teens"],
  ["map N", "teens"],
  // Edges 110 and 150: 113 and 130 lie on one side.
  ["systolic one N", "fifteen fifty sixteen sixty seventeen seventy eighteen eighty nineteen ninety"],
  ["one N over seventy five", "fifteen fifty sixteen sixty seventeen seventy eighteen eighty nineteen ninety"],
  ["systolic two N", "-"],
  ["map one N", "-"],
  ["heart rate N", "teens"],
  // Edge 120.
  ["heart rate one N", "teens tys"],
  ["heart rate two N", "-"],
  ["breaths N", "thirteen thirty fourteen forty fifteen fifty sixteen sixty seventeen seventy eighteen eighty"],
  ["sats N", "-"],
  ["sats N percent", "-"],
  ["end tidal N", "teens tys"],
  ["end tidal N millimetres", "teens tys"],
  ["end tidal one N", "-"],
  // Sixteen kilopascals are 120 mmHg, more than the limit.
  ["end tidal N kilopascals", "sixteen"],
  ["i c p N", "teens tys"],
  ["i c p N millimetres of mercury", "teens tys"],
  ["i c p N centimetres of water", "teens tys"],
  // Seventy and more are degrees Fahrenheit, and outside the limits.
  ["temperature N", "seventy eighty ninety"],
  ["temperature N point five", "seventy eighty ninety"],
  // Bare, sixteen is in mmol/L and sixty in mg/dL: high and low.
  ["glucose N", "teens tys"],
  // Nineteen mg/dL are just over the lowest value.
  ["glucose N milligrams per decilitre", "teens ninety"],
  ["glucose one N milligrams per decilitre", "nineteen ninety"],
  ["weight N kilos", "teens tys"],
  ["weight one N kilos", "teens tys"],
  ["weight two N kilos", "teens tys"],
  ["weight N pounds", "teens tys"],
  ["weight one N pounds", "teens tys"],
  ["height one N centimetres", "teens tys"],
  ["age N", "teens tys"],
  ["age N years", "teens tys"],
  // Thirty months cannot be said; a teen of months is asked back all the same.
  ["age N months", "teens"],
];
