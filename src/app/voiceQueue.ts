import type { Priority } from "../protocol/priority.ts";

/** Something to be said. `reply` answers the user; an alert carries its priority and its alert. */
export type QueueItem = {
  readonly id: number;
  readonly text: string;
  readonly priority: Priority | "none";
  readonly alertId: string | undefined;
  /** To be said briskly where it would last longer. */
  readonly withinMs?: number;
};

export type VoiceQueue = {
  readonly speaking: QueueItem | undefined;
  readonly waiting: readonly QueueItem[];
  /** The user is talking: nothing but a high alert starts. */
  readonly userTalks: boolean;
  readonly nextId: number;
};

export type VoiceInput =
  | { readonly kind: "say"; readonly items: readonly Omit<QueueItem, "id">[] }
  /** These alerts no longer hold. */
  | { readonly kind: "withdraw"; readonly alertIds: readonly string[] }
  | { readonly kind: "ended"; readonly id: number }
  | { readonly kind: "userStarted" }
  | { readonly kind: "userEnded" };

export type VoiceEffect = { readonly kind: "speak"; readonly item: QueueItem } | { readonly kind: "silence" };

export const emptyVoiceQueue: VoiceQueue = { speaking: undefined, waiting: [], userTalks: false, nextId: 1 };

const RANK: Readonly<Record<QueueItem["priority"], number>> = { high: 0, medium: 1, none: 2, low: 3 };
/** A notice has a name but no priority: it can wait for replies, and none takes its place. */
const rank = (item: QueueItem): number =>
  item.priority === "none" && item.alertId !== undefined ? RANK.low : RANK[item.priority];
const urgent = (item: QueueItem): boolean => item.priority === "high";

/** An alert said again replaces the older wording of the same alert; a new reply replaces replies not yet said. */
const supersedes = (fresh: QueueItem, old: QueueItem): boolean =>
  fresh.alertId === undefined
    ? fresh.priority === "none" && old.priority === "none" && old.alertId === undefined
    : fresh.alertId === old.alertId;

/** Starts the most urgent item, oldest first, if nothing sounds and nobody talks. */
function start(queue: VoiceQueue): readonly [VoiceQueue, readonly VoiceEffect[]] {
  if (queue.speaking !== undefined) return [queue, []];
  const ready = queue.userTalks ? queue.waiting.filter(urgent) : queue.waiting;
  const [next] = [...ready].sort((a, b) => rank(a) - rank(b) || a.id - b.id);
  if (next === undefined) return [queue, []];
  const waiting = queue.waiting.filter((item) => item !== next);
  return [{ ...queue, speaking: next, waiting }, [{ kind: "speak", item: next }]];
}

/** What sounds is cut off. An alert is said again later, unless newer words for it wait; a reply is not. */
function cutOff(queue: VoiceQueue, keep: boolean): VoiceQueue {
  const { speaking, waiting } = queue;
  const isAlert = speaking?.alertId !== undefined && !waiting.some((w) => w.alertId === speaking.alertId);
  const again = keep && isAlert ? [speaking] : [];
  return { ...queue, speaking: undefined, waiting: [...again, ...waiting] };
}

/** Silences what sounds and goes on with the rest. */
function interrupt(queue: VoiceQueue, keep: boolean): readonly [VoiceQueue, readonly VoiceEffect[]] {
  const [after, effects] = start(cutOff(queue, keep));
  return [after, [{ kind: "silence" }, ...effects]];
}

function say(
  queue: VoiceQueue,
  added: readonly Omit<QueueItem, "id">[],
): readonly [VoiceQueue, readonly VoiceEffect[]] {
  const fresh = added.map((item, i) => ({ ...item, id: queue.nextId + i }));
  const kept = queue.waiting.filter((old) => !fresh.some((item) => supersedes(item, old)));
  const next = { ...queue, waiting: [...kept, ...fresh], nextId: queue.nextId + fresh.length };
  const { speaking } = queue;
  if (speaking === undefined || urgent(speaking)) return start(next);
  const outdated = fresh.some((item) => supersedes(item, speaking));
  return outdated || fresh.some(urgent) ? interrupt(next, !outdated) : [next, []];
}

/**
 * Who speaks next. One voice at a time; high before medium before replies before low; what is no longer true or was said
 * anew is dropped; a high alert cuts in.
 */
export function queueVoice(queue: VoiceQueue, input: VoiceInput): readonly [VoiceQueue, readonly VoiceEffect[]] {
  switch (input.kind) {
    case "say":
      return say(queue, input.items);
    case "withdraw": {
      const gone = (item: QueueItem) => item.alertId !== undefined && input.alertIds.includes(item.alertId);
      const next = { ...queue, waiting: queue.waiting.filter((item) => !gone(item)) };
      return queue.speaking !== undefined && gone(queue.speaking) ? interrupt(next, false) : [next, []];
    }
    case "ended":
      return queue.speaking?.id === input.id ? start({ ...queue, speaking: undefined }) : [queue, []];
    case "userStarted": {
      // Nothing starts here: a high alert that was talked over waits until the user is done, or it would never be silent.
      const silence = queue.speaking === undefined ? [] : [{ kind: "silence" } as const];
      return [{ ...cutOff(queue, true), userTalks: true }, silence];
    }
    case "userEnded":
      return start({ ...queue, userTalks: false });
  }
}
