const ONES =
  "zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen".split(
    " ",
  );
const TENS = "- - twenty thirty forty fifty sixty seventy eighty ninety".split(" ");

function belowHundred(n: number): string {
  if (n < 20) return ONES[n]!;
  return n % 10 === 0 ? TENS[n / 10]! : `${TENS[Math.floor(n / 10)]!} ${ONES[n % 10]!}`;
}

function whole(n: number): string {
  if (n < 100) return belowHundred(n);
  const rest = n % 100;
  const hundreds = ONES[Math.floor(n / 100)]!;
  if (rest === 0) return `${hundreds} hundred`;
  return rest < 10 ? `${hundreds} oh ${ONES[rest]!}` : `${hundreds} ${belowHundred(rest)}`;
}

/** A number as it is said at a bedside: "one oh four", "thirty six point five". 0 to 999, at most one decimal is said. */
export function spell(value: number): string {
  const tenths = Math.round(value * 10);
  const n = Math.floor(tenths / 10);
  return tenths % 10 === 0 ? whole(n) : `${whole(n)} point ${ONES[tenths % 10]!}`;
}
