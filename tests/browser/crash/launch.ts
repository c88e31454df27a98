import type { Found, FromPage, Spoil } from "./crashMessages.ts";
import type { CrashServer } from "./crashServer.ts";
import { startBrowser } from "./killedBrowser.ts";
import type { TurnName } from "./crashTurns.ts";

/** Where a launch was when its browser was killed: before the page was asked for, before it had told what it found, after. */
export type Phase = "starting" | "loading" | "writing";

/**
 * When to kill: so long after the start, after the page was asked for, or after it has told what it found; or with the nth
 * acknowledgement.
 */
export type Moment =
  | { readonly after: "start" | "page" | "found"; readonly ms: number }
  | { readonly after: "acknowledgements"; readonly count: number };

export type Launched = {
  readonly phase: Phase;
  /** None where the kill came first. */
  readonly found: Found | undefined;
  /** When the page was asked for and when it had told what it found, ms after the start of the browser. */
  readonly pageAtMs: number;
  readonly foundAtMs: number;
  readonly acknowledged: readonly TurnName[];
};

export type LaunchParts = {
  readonly browserPath: string;
  readonly server: CrashServer;
  readonly profile: string;
  readonly launch: number;
  readonly moment: Moment;
  readonly spoil: Spoil | undefined;
};

/** Far more than any launch takes; what takes longer hangs. */
const LIMIT_MS = 60_000;

/**
 * One browser from its start to its violent death. What the page told before it counts, whenever it is read.
 *
 * Throws where the page cannot write, or is not killed in time.
 */
export async function launchAndKill(parts: LaunchParts): Promise<Launched> {
  const { server, launch, moment, spoil } = parts;
  let phase: Phase = "starting";
  let found: Found | undefined;
  let pageAtMs = NaN;
  let foundAtMs = NaN;
  const acknowledged: TurnName[] = [];
  const startedMs = performance.now();
  const address = `${server.origin}/?launch=${launch}${spoil === undefined ? "" : `&spoil=${spoil}`}`;
  const browser = startBrowser(parts.browserPath, parts.profile, address);
  const timers: ReturnType<typeof setTimeout>[] = [];
  const later = (act: () => void, ms: number): void => void timers.push(setTimeout(act, ms));
  const broken = new Promise<never>((_, reject) => {
    const take = (message: FromPage): void => {
      switch (message.kind) {
        case "found":
          found = message;
          phase = "writing";
          foundAtMs = performance.now() - startedMs;
          if (moment.after === "found") later(() => browser.kill(), moment.ms);
          return;
        case "saved":
          acknowledged.push({ launch: message.launch, turn: message.turn });
          if (moment.after === "acknowledgements" && acknowledged.length >= moment.count) browser.kill();
          return;
        case "failed":
          reject(new Error(`launch ${launch} could not write: ${JSON.stringify(message.error)}`));
      }
    };
    const onPage = (): void => {
      phase = "loading";
      pageAtMs = performance.now() - startedMs;
      if (moment.after === "page") later(() => browser.kill(), moment.ms);
    };
    server.listen(onPage, take);
    later(() => reject(new Error(`launch ${launch} was not killed in time`)), LIMIT_MS);
  });
  if (moment.after === "start") later(() => browser.kill(), moment.ms);
  try {
    await Promise.race([browser.dead, broken]);
  } finally {
    timers.forEach(clearTimeout);
    browser.kill();
    await browser.dead;
  }
  return { phase, found, pageAtMs, foundAtMs, acknowledged };
}
