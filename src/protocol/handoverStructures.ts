/** Public mnemonics of a handover. */
export const HANDOVER_STRUCTURES = ["ATMIST", "IMIST-AMBO", "ISBAR"] as const;
