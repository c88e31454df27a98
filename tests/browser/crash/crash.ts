/**
 * Kills browsers in the middle of writing, and says what was left: `npm run crash -- --kills 1000 [--seed N]`.
 *
 * Exit status 1 where anything was lost, torn, altered or out of order.
 */
import { parseArgs } from "node:util";
import { findBrowser } from "../findBrowser.ts";
import { killBrowsers } from "./crashRun.ts";
import { buildCrashPage } from "./crashServer.ts";

const { values } = parseArgs({
  options: { kills: { type: "string", default: "1000" }, seed: { type: "string", default: "1" } },
});
const kills = Number(values.kills);
const seed = Number(values.seed);
if (!Number.isInteger(kills) || kills < 1 || !Number.isInteger(seed)) {
  console.error("usage: npm run crash -- [--kills COUNT] [--seed NUMBER]");
  process.exit(2);
}

const startedMs = performance.now();
const script = await buildCrashPage();
let killed = 0;
const onKill = (): void => void process.stderr.write(`\r${++killed} of ${kills} kills`);
const { faults, ...tally } = await killBrowsers({ browserPath: findBrowser(), script, kills, seed, onKill });
process.stderr.write("\n");
const seconds = Math.round((performance.now() - startedMs) / 1000);
console.log(JSON.stringify({ ...tally, faults: faults.length, seconds }, null, 2));
for (const { kind, text } of faults) console.log(`${kind}: ${text}`);
process.exitCode = faults.length === 0 ? 0 : 1;
