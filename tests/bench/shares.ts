import { wilson } from "./wilson.ts";

export const percent = (share: number, decimals = 1): string => (100 * share).toFixed(decimals);

/** "93.3 (89.1–96.0)": per cent with its 95 % interval (Wilson). */
export function shareText(count: number, n: number, decimals = 1): string {
  if (n === 0) return "–";
  const { low, high } = wilson(count, n);
  return `${percent(count / n, decimals)} (${percent(low, decimals)}–${percent(high, decimals)})`;
}
