import { PART_MISSING } from "../language/sentences/caseList.ts";

/** Loads a part of the page that is not loaded before it is wanted. Throws in plain words where it is not to be had. */
export async function loadPart<T>(load: () => Promise<T>): Promise<T> {
  try {
    return await load();
  } catch {
    throw new Error(PART_MISSING);
  }
}
