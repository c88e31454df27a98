import { createMemoryFactStore } from "../../src/adapters/storage/memoryFactStore.ts";
import type { Announcement } from "../../src/app/announcement.ts";
import type { AppContext } from "../../src/app/context.ts";
import { Session, type Report } from "../../src/app/session.ts";
import { firstSettings } from "../../src/app/settings.ts";
import { FIRST_TALK } from "../../src/app/talkState.ts";
import { viewScreen } from "../../src/app/view/screen.ts";
import type { Fact } from "../../src/log/facts.ts";
import { createRandom } from "../bench/random.ts";
import { Clinician, type Noticed } from "./clinician.ts";
import { createPatient, PATIENTS } from "./patient.ts";

/** What one utterance or one second led to. */
export type SimTurn = {
  readonly atMs: number;
  readonly said: string | undefined;
  readonly outcome: string | undefined;
  readonly reply: string;
  readonly facts: readonly Fact[];
  readonly announcements: readonly Announcement[];
};
/** What the screen showed of alerts at one moment. */
export type Shown = { readonly atMs: number; readonly alertIds: readonly string[] };
export type SimRun = { readonly turns: readonly SimTurn[]; readonly shown: readonly Shown[]; readonly lastsS: number };

/** Whoever speaks to the tool: says at most one line in a second, and notices what came of it. */
export interface Speaking {
  next(nowS: number): string | undefined;
  notice(nowS: number, noticed: Noticed): void;
}

const START_MS = 1_800_000_000_000;

/**
 * Plays one case through the session that the page and the terminal run, second by second, and keeps all that came of it.
 */
export async function playRun(context: AppContext, speaking: Speaking, lastsS: number): Promise<SimRun> {
  const store = createMemoryFactStore();
  const session = new Session({ context, store, newCaseId: () => "sim" });
  const turns: SimTurn[] = [];
  const shown: Shown[] = [];
  const { announcements } = await session.start(START_MS);
  // Facts point to one another by their number in the case, so the first one must not be left out.
  const opened = await store.load();
  const facts = opened.ok ? opened.value : [];
  turns.push({ atMs: START_MS, said: undefined, outcome: undefined, reply: "", facts, announcements });
  for (let nowS = 1; nowS <= lastsS; nowS++) {
    const atMs = START_MS + nowS * 1000;
    const spoken: Announcement[] = [];
    const keep = (said: string | undefined, { facts, announcements, answer }: Report): void => {
      spoken.push(...announcements);
      if (said === undefined && facts.length === 0 && announcements.length === 0) return;
      turns.push({ atMs, said, outcome: answer?.outcome, reply: answer?.reply ?? "", facts, announcements });
    };
    keep(undefined, await session.tick(atMs));
    const line = speaking.next(nowS);
    const utterance = { by: "typed", candidates: [{ words: line ?? "", score: 0 }], endedAtMs: atMs } as const;
    if (line !== undefined) keep(line, await session.hear(utterance, atMs));
    speaking.notice(nowS, { questionId: session.state.log.questions[0]?.id, spoken });
    if (nowS % 60 === 0) {
      const { alerts } = viewScreen(context, session.state, FIRST_TALK, firstSettings, atMs);
      shown.push({ atMs, alertIds: alerts.map(({ id }) => id) });
    }
  }
  return { turns, shown, lastsS };
}

export type SimOptions = {
  readonly seed: number;
  readonly hours: number;
  /** Said first: how much the tool is to talk. */
  readonly firstLines?: readonly string[];
};

/** One invented patient with one invented clinician. The same options give the same run. */
export function playSim(context: AppContext, { seed, hours, firstLines = [] }: SimOptions): Promise<SimRun> {
  const random = createRandom(seed);
  const kind = PATIENTS[seed % PATIENTS.length]!;
  const lastsS = Math.round(hours * 3600);
  const inductionS = 60 * (14 + random.below(12));
  const bodyAt = createPatient(kind, random, lastsS, inductionS);
  const clinician = new Clinician(kind, random, inductionS, lastsS, firstLines);
  let body = bodyAt(0);
  const next = (nowS: number): string | undefined => {
    if (nowS % 10 === 0) body = bodyAt(nowS);
    return clinician.next(nowS, body);
  };
  return playRun(context, { next, notice: (nowS, noticed) => clinician.notice(nowS, noticed) }, lastsS);
}
