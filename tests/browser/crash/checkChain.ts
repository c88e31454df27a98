import type { FactRecord } from "../../../src/adapters/storage/factDatabase.ts";

/**
 * What does not fit in the chain of hashes. Records carry none yet, so there is nothing to find.
 * To be filled when they do.
 */
export const checkChain = (_records: readonly FactRecord[]): readonly string[] => [];
