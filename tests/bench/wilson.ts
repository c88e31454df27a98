const Z_95 = 1.959963984540054;

/**
 * The 95 % interval of a share, from 0 to 1: Wilson's score interval without continuity correction.
 * Source: E. B. Wilson, J Am Stat Assoc 1927;22:209; recommended in R. G. Newcombe, Stat Med 1998;17:857.
 *
 * @param count how many of `n`. With n = 0 nothing is known: 0 to 1.
 */
export function wilson(count: number, n: number): { readonly low: number; readonly high: number } {
  if (n === 0) return { low: 0, high: 1 };
  const p = count / n;
  const z2 = Z_95 ** 2;
  const middle = p + z2 / (2 * n);
  const half = Z_95 * Math.sqrt((p * (1 - p)) / n + z2 / (4 * n * n));
  const scale = 1 + z2 / n;
  return { low: Math.max(0, (middle - half) / scale), high: Math.min(1, (middle + half) / scale) };
}

/**
 * The 95 % upper bound of a rate per hour, from a count of events in so many hours (exact Poisson, by bisection).
 * Source: F. Garwood, Biometrika 1936;28:437. With no event this is 3.69 / hours (two-sided; the "rule of three" is one-sided).
 */
export function rateUpperPerHour(count: number, hours: number): number {
  return hours <= 0 ? Infinity : meanAt(count, 0.025) / hours;
}

/** The 95 % lower bound of the same: 0 without an event. */
export function rateLowerPerHour(count: number, hours: number): number {
  return hours <= 0 || count === 0 ? 0 : meanAt(count - 1, 0.975) / hours;
}

/** The Poisson mean at which so few events or fewer have this chance. */
function meanAt(count: number, chance: number): number {
  const chanceOfSoFew = (mean: number): number => {
    let term = Math.exp(-mean);
    let sum = term;
    for (let k = 1; k <= count; k++) sum += term *= mean / k;
    return sum;
  };
  let [low, high] = [0, 2 * count + 20];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (chanceOfSoFew(middle) > chance) low = middle;
    else high = middle;
  }
  return high;
}
