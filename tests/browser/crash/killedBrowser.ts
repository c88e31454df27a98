import { spawn } from "node:child_process";
import { readdirSync, readFileSync, rmSync } from "node:fs";
import { join } from "node:path";

/** No looking for updates, no names that leave this machine, and as few processes as still make a whole browser. */
const LEAN = [
  "--headless",
  "--no-sandbox",
  "--disable-gpu",
  "--in-process-gpu",
  "--disable-features=SpareRendererForSitePerProcess",
  "--disable-breakpad",
  "--no-first-run",
  "--disable-extensions",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
  "--no-proxy-server",
  "--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1",
];

/** What a killed browser leaves behind to say that the profile is in use. */
const LEFT_BEHIND = ["SingletonLock", "SingletonCookie", "SingletonSocket", "DevToolsActivePort"];

const DEATH_LIMIT_MS = 30_000;
const LOOK_EVERY_MS = 15;

export type KilledBrowser = {
  /** SIGKILL to every process of this browser, at once. */
  kill(): void;
  /** SIGSTOP to every one of them, or SIGCONT: they stand still in between. */
  hold(held: boolean): void;
  isKilled(): boolean;
  /** Settles when none of them runs any more. Rejects where it ended by itself: that is no kill. */
  readonly dead: Promise<void>;
};

/** Whether a process of the group can still write. One that is dead and not yet collected cannot. */
function isRunning(group: number): boolean {
  try {
    process.kill(-group, 0);
  } catch {
    return false;
  }
  if (process.platform !== "linux") return true;
  return readdirSync("/proc").some((name) => {
    if (!/^\d+$/u.test(name)) return false;
    try {
      // After the name in brackets: state, parent, process group.
      const [state, , itsGroup] = readFileSync(`/proc/${name}/stat`, "utf8").split(") ").at(-1)!.split(" ");
      return Number(itsGroup) === group && state !== "Z" && state !== "X";
    } catch {
      return false; // gone meanwhile
    }
  });
}

async function untilDead(group: number): Promise<void> {
  const limitMs = performance.now() + DEATH_LIMIT_MS;
  while (isRunning(group)) {
    if (performance.now() > limitMs) throw new Error(`browser ${group} does not die`);
    await new Promise((later) => setTimeout(later, LOOK_EVERY_MS));
  }
}

/** Starts a browser in a process group of its own, to be killed. */
export function startBrowser(
  browserPath: string,
  profile: string,
  address: string,
  flags: readonly string[] = [],
): KilledBrowser {
  for (const name of LEFT_BEHIND) rmSync(join(profile, name), { force: true });
  const browser = spawn(browserPath, [...LEAN, ...flags, `--user-data-dir=${profile}`, address], {
    detached: true,
    stdio: "ignore",
  });
  let isKilled = false;
  const ended = new Promise<void>((resolve, reject) => {
    browser.on("error", reject);
    browser.on("exit", (code) => {
      if (isKilled) resolve();
      else reject(new Error(`the browser ended by itself, with status ${code}`));
    });
  });
  const dead = ended.then(() => untilDead(browser.pid!));
  dead.catch(() => undefined); // whoever waits for it hears of it
  return {
    isKilled: () => isKilled,
    kill() {
      if (browser.pid === undefined || browser.exitCode !== null || isKilled) return;
      isKilled = true;
      process.kill(-browser.pid, "SIGKILL");
    },
    hold(held) {
      if (browser.pid !== undefined && browser.exitCode === null && !isKilled)
        process.kill(-browser.pid, held ? "SIGSTOP" : "SIGCONT");
    },
    dead,
  };
}
