import { spawnSync } from "node:child_process";
import { accessSync, constants } from "node:fs";

const SYSTEM_PATHS = [
  "/usr/bin/chromium",
  "/usr/bin/chromium-browser",
  "/usr/bin/google-chrome",
  "/usr/bin/google-chrome-stable",
  "/snap/bin/chromium",
  "/Applications/Chromium.app/Contents/MacOS/Chromium",
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
];

function isExecutable(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

function installChromium(): void {
  const env = { ...process.env, DEBIAN_FRONTEND: "noninteractive" };
  for (const args of [["update"], ["install", "-y", "--no-install-recommends", "chromium"]]) {
    spawnSync("apt-get", args, { stdio: ["ignore", "ignore", "inherit"], env });
  }
}

/**
 * Path of a Chromium: `CHROME_PATH`, else one the system has, else one installed with apt-get where this process may.
 * Throws with what to do when there is none.
 */
export function findBrowser(): string {
  const chosen = process.env["CHROME_PATH"];
  if (chosen !== undefined && chosen !== "") {
    if (isExecutable(chosen)) return chosen;
    throw new Error(`CHROME_PATH is ${chosen}, which is not a program`);
  }
  const found = SYSTEM_PATHS.find(isExecutable);
  if (found !== undefined) return found;
  if (process.getuid?.() === 0 && isExecutable("/usr/bin/apt-get")) {
    installChromium();
    const installed = SYSTEM_PATHS.find(isExecutable);
    if (installed !== undefined) return installed;
  }
  throw new Error("No Chromium found. Install one, or set CHROME_PATH to its program.");
}
