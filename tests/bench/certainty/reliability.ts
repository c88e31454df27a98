/** How often utterances of about one certainty meant what their words mean. */
export type Bin = { readonly from: number; readonly n: number; readonly predicted: number; readonly observed: number };

/** Finer towards certainty, where the decisions are made. */
const EDGES = [0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.95, 0.98, 0.99, 0.995];

export function reliability(
  observations: readonly { readonly certainty: number; readonly isRight: boolean; readonly weight: number }[],
): readonly Bin[] {
  return EDGES.flatMap((from, i) => {
    const inside = observations.filter(({ certainty }) => certainty >= from && certainty < (EDGES[i + 1] ?? Infinity));
    const weight = inside.reduce((sum, o) => sum + o.weight, 0);
    if (weight === 0) return [];
    const mean = (value: (o: (typeof inside)[number]) => number): number =>
      round(inside.reduce((sum, o) => sum + o.weight * value(o), 0) / weight);
    return [
      { from, n: inside.length, predicted: mean((o) => o.certainty), observed: mean((o) => (o.isRight ? 1 : 0)) },
    ];
  });
}

const round = (x: number): number => Math.round(x * 1e4) / 1e4;

const SIDE = 420;
const MARGIN = 50;
const at = (share: number): number => MARGIN + share * (SIDE - 2 * MARGIN);

/** Predicted against observed; on the line they agree. The area of a point is the number of utterances. */
export function reliabilitySvg(sets: readonly { readonly name: string; readonly bins: readonly Bin[] }[]): string {
  const most = Math.max(...sets.flatMap(({ bins }) => bins.map((b) => b.n)), 1);
  const point = (b: Bin, i: number): string =>
    `<circle cx="${at(b.predicted).toFixed(1)}" cy="${(SIDE - at(b.observed)).toFixed(1)}" r="${(3 + 9 * Math.sqrt(b.n / most)).toFixed(1)}" fill="${i === 0 ? "#1f5f8b" : "none"}" fill-opacity="0.45" stroke="${i === 0 ? "#1f5f8b" : "#a33b20"}" stroke-width="1.5"/>`;
  const ticks = [0, 0.25, 0.5, 0.75, 1].map(
    (t) =>
      `<text x="${at(t)}" y="${SIDE - MARGIN + 16}" text-anchor="middle">${t}</text><text x="${MARGIN - 8}" y="${SIDE - at(t) + 4}" text-anchor="end">${t}</text>`,
  );
  const legend = sets.map(
    ({ name }, i) =>
      `<circle cx="${MARGIN + 14}" cy="${MARGIN + 10 + 18 * i}" r="5" fill="${i === 0 ? "#1f5f8b" : "none"}" fill-opacity="0.45" stroke="${i === 0 ? "#1f5f8b" : "#a33b20"}"/><text x="${MARGIN + 24}" y="${MARGIN + 14 + 18 * i}">${name}</text>`,
  );
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${SIDE} ${SIDE}" font-family="sans-serif" font-size="12">`,
    `<rect width="${SIDE}" height="${SIDE}" fill="#fff"/>`,
    `<path d="M${at(0)} ${SIDE - at(0)}H${at(1)}M${at(0)} ${SIDE - at(0)}V${SIDE - at(1)}M${at(0)} ${SIDE - at(0)}L${at(1)} ${SIDE - at(1)}" stroke="#888" fill="none"/>`,
    ...ticks,
    `<text x="${SIDE / 2}" y="${SIDE - 12}" text-anchor="middle">certainty</text>`,
    `<text x="14" y="${SIDE / 2}" text-anchor="middle" transform="rotate(-90 14 ${SIDE / 2})">share that was right</text>`,
    ...legend,
    ...sets.flatMap(({ bins }, i) => bins.map((b) => point(b, i))),
    "</svg>",
    "",
  ].join("\n");
}
