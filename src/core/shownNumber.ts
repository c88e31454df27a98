/**
 * Decimal rounding, half away from zero: the one place where a value is rounded, when it is shown or said.
 * Works on the printed decimal form, so that 0.285 to two places is 0.29.
 */
export function roundedText(value: number, decimals: 0 | 1 | 2 | 3): string {
  // Numbers that JavaScript prints with an exponent of their own are either nothing at this precision or too large.
  const scaled = Math.abs(value) < 1e-6 ? 0 : Math.round(Number(`${Math.abs(value)}e${decimals}`));
  if (!Number.isSafeInteger(scaled)) return String(value);
  const digits = String(scaled).padStart(decimals + 1, "0");
  const sign = value < 0 && scaled > 0 ? "-" : "";
  return sign + (decimals === 0 ? digits : `${digits.slice(0, -decimals)}.${digits.slice(-decimals)}`);
}

export const withoutTrailingZeros = (text: string): string => (text.includes(".") ? text.replace(/\.?0+$/u, "") : text);

/** Three figures are all that a dose can use: whole from a hundred on, one decimal from ten on, else two. */
export const roundedDose = (value: number): number =>
  Number(roundedText(value, value >= 100 ? 0 : value >= 10 ? 1 : 2));

const grouped = (text: string): string => {
  const [integer = "", fraction] = text.split(".");
  // A no-break space: a number must never be broken over two lines.
  const groups = integer.replace(/\B(?=(\d{3})+$)/gu, "\u00a0");
  return fraction === undefined ? groups : `${groups}.${fraction}`;
};

/** A measured number as printed: leading zero always, exactly `decimals` decimals, thousands grouped by a space. */
export const showNumber = (value: number, decimals: 0 | 1 | 2): string =>
  Number.isFinite(value) ? grouped(roundedText(value, decimals)) : "no number";

/** A rate or an amount as somebody said it, printed: up to three decimals, no trailing zero (0.025, 5). */
export const showExactly = (value: number): string =>
  Number.isFinite(value) ? grouped(withoutTrailingZeros(roundedText(value, 3))) : "no number";

/** An amount as printed, such as a dose: as `showNumber`, but never a trailing zero (5, not 5.0). */
export const showAmount = (value: number): string =>
  Number.isFinite(value) ? grouped(withoutTrailingZeros(roundedText(value, 2))) : "no number";
