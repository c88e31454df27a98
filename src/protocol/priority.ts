/** Alarm priorities as IEC 60601-1-8 names them. */
export type Priority = "high" | "medium" | "low";

const RANK: Readonly<Record<Priority, number>> = { low: 0, medium: 1, high: 2 };

export const isWorse = (a: Priority, b: Priority): boolean => RANK[a] > RANK[b];
