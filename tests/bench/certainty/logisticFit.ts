/** One observation: what was measured, whether it turned out so, and how much it counts. */
export type Observation = { readonly features: readonly number[]; readonly isSo: boolean; readonly weight: number };

const MOST_STEPS = 50;
const SETTLED = 1e-9;

/**
 * Logistic regression by Newton's method: the weights under which the observations are likeliest, less `ridge` times half
 * the square of each weight but the first.
 *
 * @returns one weight per feature. Throws when there is nothing to fit or the steps do not settle.
 */
export function fitLogistic(observations: readonly Observation[], ridge: number): readonly number[] {
  const size = observations[0]?.features.length;
  if (size === undefined) throw new Error("nothing to fit");
  let weights = new Array<number>(size).fill(0);
  for (let step = 0; step < MOST_STEPS; step++) {
    const gradient = weights.map((w, i) => (i === 0 ? 0 : -ridge * w));
    const curvature = weights.map((_, i) => weights.map((__, j) => (i === j && i > 0 ? ridge : 0)));
    for (const { features, isSo, weight } of observations) {
      const p = 1 / (1 + Math.exp(-features.reduce((sum, f, i) => sum + f * weights[i]!, 0)));
      for (let i = 0; i < size; i++) {
        gradient[i]! += weight * ((isSo ? 1 : 0) - p) * features[i]!;
        for (let j = 0; j < size; j++) curvature[i]![j]! += weight * p * (1 - p) * features[i]! * features[j]!;
      }
    }
    const change = solve(curvature, gradient);
    weights = weights.map((w, i) => w + change[i]!);
    if (Math.max(...change.map(Math.abs)) < SETTLED) return weights;
  }
  throw new Error("the fit does not settle: too few observations for so many features?");
}

/** Gaussian elimination with the largest pivot. Throws when the features depend on each other. */
function solve(matrix: readonly (readonly number[])[], right: readonly number[]): readonly number[] {
  const rows = matrix.map((row, i) => [...row, right[i]!]);
  const size = rows.length;
  for (let column = 0; column < size; column++) {
    let pivot = column;
    for (let i = column + 1; i < size; i++)
      if (Math.abs(rows[i]![column]!) > Math.abs(rows[pivot]![column]!)) pivot = i;
    [rows[column], rows[pivot]] = [rows[pivot]!, rows[column]!];
    const head = rows[column]!;
    if (Math.abs(head[column]!) < 1e-12) throw new Error("the features depend on each other");
    for (let i = 0; i < size; i++) {
      if (i === column) continue;
      const factor = rows[i]![column]! / head[column]!;
      for (let j = column; j <= size; j++) rows[i]![j]! -= factor * head[j]!;
    }
  }
  return rows.map((row, i) => row[size]! / row[i]!);
}
