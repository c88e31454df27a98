/** Checks that every dependency is pinned to one version and that the lock file names no download address. */
import { readFileSync } from "node:fs";

const EXACT = /^\d+\.\d+\.\d+(-[0-9A-Za-z.-]+)?$/;

const manifest = JSON.parse(readFileSync("package.json", "utf8"));
const lock = JSON.parse(readFileSync("package-lock.json", "utf8"));
const faults = [];

const asked = { ...manifest.dependencies, ...manifest.devDependencies };
for (const [name, version] of Object.entries(asked)) {
  if (!EXACT.test(version)) faults.push(`package.json: ${name} is "${version}", not one exact version`);
}
for (const [path, entry] of Object.entries(lock.packages)) {
  if (entry.resolved !== undefined) faults.push(`package-lock.json: ${path} names a download address`);
  if (path !== "" && entry.integrity === undefined && !entry.inBundle) {
    faults.push(`package-lock.json: ${path} has no integrity hash`);
  }
}
const root = lock.packages[""];
for (const [name, version] of Object.entries(asked)) {
  const locked = { ...root.dependencies, ...root.devDependencies }[name];
  if (locked !== version) faults.push(`package-lock.json: ${name} is locked as "${locked}", asked for as "${version}"`);
}

for (const fault of faults) console.error(fault);
console.log(
  `${Object.keys(asked).length} dependencies pinned, ${Object.keys(lock.packages).length - 1} packages locked`,
);
process.exitCode = faults.length > 0 ? 1 : 0;
