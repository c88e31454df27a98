/** Alarm priorities as IEC 60601-1-8 names them. */
export type Priority = "high" | "medium" | "low";
