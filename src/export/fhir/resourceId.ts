/** Fractions of square roots, as starting values that hide nothing. */
const LANES = [0x6a09e667, 0xbb67ae85, 0x3c6ef372, 0xa54ff53a] as const;
const STEP = 0x9e3779b1;

/** Spreads every bit of a lane over all of it. The multipliers are those of the finaliser of MurmurHash3, from memory. */
function spread(lane: number): number {
  const a = Math.imul(lane ^ (lane >>> 16), 0x85ebca6b);
  const b = Math.imul(a ^ (a >>> 13), 0xc2b2ae35);
  return (b ^ (b >>> 16)) >>> 0;
}

/**
 * A UUID made from a text, the same one for the same text: what refers to a fact today refers to it in the next export.
 *
 * @param key the id of a fact, and what is made of it.
 * @returns   a UUID of version 8, whose 122 free bits are the hash.
 *
 * Not for: secrets, or telling that a record was not altered.
 * Source: form of RFC 9562, section 5.8.
 */
export function resourceId(key: string): string {
  const lanes = Uint32Array.from(LANES);
  const next = (n: number): number => lanes[(n + 1) & 3] ?? 0;
  for (let i = 0; i < key.length; i++)
    for (let n = 0; n < 4; n++)
      lanes[n] = Math.imul(spread((lanes[n] ?? 0) ^ (key.charCodeAt(i) + i) ^ next(n)), STEP + 2 * n);
  const mixed = Array.from(lanes, (lane, n) => spread(lane ^ spread(next(n)) ^ key.length));
  const hex = mixed.map((lane) => lane.toString(16).padStart(8, "0")).join("");
  const variant = "89ab"[Number.parseInt(hex[16] ?? "0", 16) & 3];
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-8${hex.slice(13, 16)}-${variant}${hex.slice(17, 20)}-${hex.slice(20)}`;
}
