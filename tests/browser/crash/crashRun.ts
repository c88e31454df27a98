import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { createRandom, type Random } from "../../bench/random.ts";
import type { Spoil } from "./crashMessages.ts";
import { openCrashServer } from "./crashServer.ts";
import { idOf, type TurnName } from "./crashTurns.ts";
import { judgeFound, turnsIn, type CrashFault } from "./judgeFound.ts";
import { launchAndKill, type Moment, type Phase } from "./launch.ts";

export type CrashTally = {
  /** Kills after which a later launch found the store, and it was judged. */
  readonly kills: Readonly<Record<Phase, number>>;
  /** Turns of which the parent was told that they are saved. */
  readonly acknowledged: number;
  /** Turns that are there although the kill came before they were acknowledged: it struck between the two. */
  readonly unacknowledged: number;
  readonly facts: number;
  readonly faults: readonly CrashFault[];
};

export type CrashOptions = {
  readonly browserPath: string;
  /** What `buildCrashPage` gives. */
  readonly script: string;
  readonly kills: number;
  readonly seed: number;
  readonly spoil?: Spoil;
  readonly onKill?: () => void;
};

/** So many of a hundred kills come while the browser starts, as the database opens and the case is read, ... */
const OF_HUNDRED = { start: 10, page: 15, acknowledgements: 30, found: 45 } as const;
/** Some ten turns on a disk that takes 25 ms for a strict commit. */
const WRITING_MS = 250;
const MOST_ACKNOWLEDGED = 10;
/** A new profile after so many kills: its store is made anew, and its case does not grow for ever. */
const KILLS_A_PROFILE = 25;
/** Two launches fill two cores. */
const PROFILES_AT_ONCE = 2;

/** How long a launch takes until the page is asked for, and the page until it has told what it found, ms. */
type Usual = { readonly startMs: number; readonly loadMs: number };
const FIRST_GUESS: Usual = { startMs: 600, loadMs: 200 };

const MOMENTS = Object.entries(OF_HUNDRED).flatMap(([after, share]) =>
  Array.from({ length: share }, () => after as Moment["after"]),
);

function chooseMoment(random: Random, { startMs, loadMs }: Usual): Moment {
  const after = random.pick(MOMENTS);
  switch (after) {
    case "start":
      return { after, ms: random.next() * startMs };
    case "page":
      return { after, ms: random.next() * loadMs };
    case "acknowledgements":
      return { after, count: 1 + random.below(MOST_ACKNOWLEDGED) };
    case "found":
      return { after, ms: random.next() * WRITING_MS };
  }
}

/** Kills the browser of one profile again and again; each launch first judges what the kills before it have left. */
async function killInProfile({ browserPath, script, kills, seed, spoil, onKill }: CrashOptions): Promise<CrashTally> {
  const random = createRandom(seed);
  const profile = mkdtempSync(join(tmpdir(), "tragus-crash-"));
  const server = await openCrashServer(script);
  const judged: Record<Phase, number> = { starting: 0, loading: 0, writing: 0 };
  const faults: CrashFault[] = [];
  const acknowledged: TurnName[] = [];
  let unjudged: Phase[] = [];
  let usual = FIRST_GUESS;
  let there: readonly TurnName[] = [];
  let facts = 0;
  try {
    for (let launch = 0; launch < kills || unjudged.length > 0; launch++) {
      // The last one only looks.
      const moment: Moment = launch < kills ? chooseMoment(random, usual) : { after: "found", ms: 0 };
      const launched = await launchAndKill({ browserPath, server, profile, launch, moment, spoil });
      const { found, phase } = launched;
      if (found !== undefined) {
        usual = { startMs: launched.pageAtMs, loadMs: launched.foundAtMs - launched.pageAtMs };
        faults.push(...judgeFound(found, acknowledged));
        for (const killedIn of unjudged) judged[killedIn]++;
        unjudged = [];
        there = turnsIn(found);
        facts = found.records.length;
      }
      if (launch >= kills) continue;
      acknowledged.push(...launched.acknowledged);
      unjudged.push(phase);
      onKill?.();
    }
  } finally {
    server.close();
    rmSync(profile, { recursive: true, force: true, maxRetries: 3 });
  }
  const told = new Set(acknowledged.map(idOf));
  const unacknowledged = there.filter((name) => !told.has(idOf(name))).length;
  return { kills: judged, acknowledged: told.size, unacknowledged, facts, faults };
}

const sum = (a: CrashTally, b: CrashTally): CrashTally => ({
  kills: {
    starting: a.kills.starting + b.kills.starting,
    loading: a.kills.loading + b.kills.loading,
    writing: a.kills.writing + b.kills.writing,
  },
  acknowledged: a.acknowledged + b.acknowledged,
  unacknowledged: a.unacknowledged + b.unacknowledged,
  facts: a.facts + b.facts,
  faults: [...a.faults, ...b.faults],
});

/** Kills so many browsers, two profiles at a time, and says what was left of what they wrote. */
export async function killBrowsers(options: CrashOptions): Promise<CrashTally> {
  const profiles = Math.ceil(options.kills / KILLS_A_PROFILE);
  const waiting = Array.from({ length: profiles }, (_, i) => ({
    ...options,
    seed: options.seed + i,
    kills: Math.min(KILLS_A_PROFILE, options.kills - i * KILLS_A_PROFILE),
  }));
  const tallies: CrashTally[] = [];
  const work = async (): Promise<void> => {
    for (let next = waiting.shift(); next !== undefined; next = waiting.shift())
      tallies.push(await killInProfile(next));
  };
  await Promise.all(Array.from({ length: PROFILES_AT_ONCE }, work));
  return tallies.reduce(sum);
}
