import { readdirSync } from "node:fs";
import { join } from "node:path";

const isRecordName = (name: string): boolean => name.toLowerCase().endsWith(".json");

/**
 * The record files of a folder and of those in it, relative to it, in the order of their names. Hidden files and folders
 * are left alone; links are not followed, so a folder cannot come round again.
 *
 * Errors: throws what the system says where the folder itself cannot be read. One inside that cannot is in `unreadable`.
 */
export function recordPaths(folder: string): {
  readonly paths: readonly string[];
  readonly unreadable: readonly string[];
} {
  const paths: string[] = [];
  const unreadable: string[] = [];
  const readInto = (inside: string): void => {
    const entries = readdirSync(join(folder, inside), { withFileTypes: true });
    for (const entry of entries.toSorted((a, b) => (a.name < b.name ? -1 : 1))) {
      if (entry.name.startsWith(".")) continue;
      const path = join(inside, entry.name);
      if (entry.isFile() && isRecordName(entry.name)) paths.push(path);
      if (!entry.isDirectory()) continue;
      try {
        readInto(path);
      } catch {
        unreadable.push(path);
      }
    }
  };
  readInto("");
  return { paths, unreadable };
}
