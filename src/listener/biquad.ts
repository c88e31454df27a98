const RATE_HZ = 16_000;

/** Second-order Butterworth section by the bilinear transform (textbook form), at 16 kHz. One sample in, one out; remembers the last two. */
export function createBiquad(kind: "high" | "low", cornerHz: number): (x: number) => number {
  const k = Math.tan((Math.PI * cornerHz) / RATE_HZ);
  const norm = 1 / (1 + Math.SQRT2 * k + k * k);
  const b0 = kind === "low" ? k * k * norm : norm;
  const b1 = kind === "low" ? 2 * b0 : -2 * b0;
  const a1 = 2 * (k * k - 1) * norm;
  const a2 = (1 - Math.SQRT2 * k + k * k) * norm;
  let z1 = 0;
  let z2 = 0;
  return (x) => {
    const y = b0 * x + z1;
    z1 = b1 * x - a1 * y + z2;
    z2 = b0 * x - a2 * y;
    return y;
  };
}
