/** What one runner did. */
export type Counts = { readonly passed: number; readonly failed: number; readonly skipped: number };

export function countsOf(report: object | undefined): Counts;
export function verdictOf(name: string, counts: Counts): string | undefined;
export function slowestOf(report: object | undefined, most?: number): readonly string[];
