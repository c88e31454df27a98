import type { Announcement } from "./announcement.ts";

/** Something to be said: an announcement, or the reply to what was heard, which has neither priority nor alert. */
export type QueueItem = Announcement & {
  readonly id: number;
  /** Unix ms: how old what it says is. */
  readonly madeAtMs: number;
  /** To be said briskly where it would last longer. */
  readonly withinMs?: number;
  /** What it asks: a question, or a step of a list. It is asked again where it was cut off and still waits. */
  readonly asksId?: string;
  /**
   * One of several that are said one after another: the others do not go stale meanwhile. The one that was cut off is said
   * again; an answer to what was said meanwhile ends all of them.
   */
  readonly isPart?: true;
  /** How often somebody has talked over it. */
  readonly talkedOver?: number;
};
export type NewItem = Omit<QueueItem, "id" | "madeAtMs" | "talkedOver">;

export type VoiceQueue = {
  readonly speaking: QueueItem | undefined;
  readonly waiting: readonly QueueItem[];
  /** The user is talking: nothing but a high alert starts. */
  readonly userTalks: boolean;
  /** What the user has talked over waits until he is done, or it would never be silent. */
  readonly talkedOver: readonly number[];
  /** Unix ms at which somebody began to talk over several parts; none while they are said. */
  readonly partsHeldAtMs?: number | undefined;
  readonly nextId: number;
};

export type VoiceInput =
  | {
      readonly kind: "say";
      readonly items: readonly NewItem[];
      /** These alerts no longer hold. */
      readonly withdrawn?: readonly string[];
      /** These questions and steps wait no longer. */
      readonly closed?: readonly string[];
      /** There are newer numbers of these: whatever older item speaks of them is not said. */
      readonly outdated?: readonly string[];
      /** Somebody has been answered: the parts of an older reply are not gone on with unasked. */
      readonly answered?: boolean;
    }
  | { readonly kind: "ended"; readonly id: number }
  | { readonly kind: "userStarted" }
  | { readonly kind: "userEnded" };

export type VoiceEffect =
  | { readonly kind: "speak"; readonly item: QueueItem }
  | { readonly kind: "silence" }
  /** These alerts still hold, but their words were too old to be said: they are to be announced anew. */
  | { readonly kind: "unsaid"; readonly alertIds: readonly string[] };

type Step = readonly [VoiceQueue, readonly VoiceEffect[]];

/** An answer after that belongs to nothing that anybody still has in mind: two long alerts with their tones. Ours. */
export const REPLY_KEEPS_MS = 12_000;
/** A quarter of the shortest time after which an alert is said again, so that its words tell no age and need none. Ours. */
export const ALERT_KEEPS_MS = 15_000;

/**
 * So often is said again what was talked over. It was begun thrice by then; and where the microphone hears our own voice, it
 * would be cut off for ever. An alert is announced anew by its clock. Ours.
 */
const AGAIN_MOST = 2;

export const emptyVoiceQueue: VoiceQueue = {
  speaking: undefined,
  waiting: [],
  userTalks: false,
  talkedOver: [],
  nextId: 1,
};

const RANK: Readonly<Record<QueueItem["priority"], number>> = { high: 0, medium: 1, none: 2, low: 3 };
const isReply = ({ priority, alertId }: NewItem): boolean => priority === "none" && alertId === undefined;
/** A notice has a name but no priority: it can wait for replies, and none takes its place. */
const rank = (item: NewItem): number => (item.priority === "none" && !isReply(item) ? RANK.low : RANK[item.priority]);
const urgent = (item: NewItem): boolean => item.priority === "high";
const isAlert = (item: NewItem): boolean => item.alertId !== undefined && item.priority !== "none";

/** An alert said again replaces the older wording of the same alert; a new reply replaces replies not yet said. */
const supersedes = (fresh: NewItem, old: NewItem): boolean =>
  fresh.alertId === undefined ? isReply(fresh) && isReply(old) && !old.isPart : fresh.alertId === old.alertId;

/** A tone alone adds nothing to words for the same alert that still sound or are to come. */
const isHeardWith = (tone: NewItem, words: NewItem): boolean =>
  tone.text === "" && words.text !== "" && supersedes(tone, words) && rank(words) <= rank(tone);

const speaksOf = ({ text, about = [] }: NewItem, codes: readonly string[]): boolean =>
  text !== "" && about.some((code) => codes.includes(code));

/** A question is closed by somebody; words without a number are withdrawn when they are no longer true. */
function keepsMs(item: QueueItem): number {
  if (item.asksId !== undefined || item.text === "" || item.isPart) return Infinity;
  if (isReply(item)) return REPLY_KEEPS_MS;
  return item.about === undefined ? Infinity : ALERT_KEEPS_MS;
}

const isStale = (item: QueueItem, nowMs: number): boolean => nowMs - item.madeAtMs > keepsMs(item);

function giveBack(items: readonly QueueItem[]): readonly VoiceEffect[] {
  const alertIds = items.flatMap((item) => (isAlert(item) ? (item.alertId ?? []) : []));
  return alertIds.length === 0 ? [] : [{ kind: "unsaid", alertIds }];
}

/** Starts the most urgent item, oldest first, if nothing sounds and nobody talks. What has waited too long is dropped. */
function start(queue: VoiceQueue, nowMs: number): Step {
  if (queue.speaking !== undefined) return [queue, []];
  const stale = queue.waiting.filter((item) => isStale(item, nowMs));
  const fresh = queue.waiting.filter((item) => !stale.includes(item));
  const ready = queue.userTalks ? fresh.filter((item) => urgent(item) && !queue.talkedOver.includes(item.id)) : fresh;
  const [next] = [...ready].sort((a, b) => rank(a) - rank(b) || a.id - b.id);
  const waiting = fresh.filter((item) => item !== next);
  const speak = next === undefined ? [] : [{ kind: "speak", item: next } as const];
  return [{ ...queue, speaking: next, waiting }, [...giveBack(stale), ...speak]];
}

/** What sounds is cut off. An alert or a question is said again later, unless newer words for it wait; a reply is not. */
function cutOff(queue: VoiceQueue): VoiceQueue {
  const { speaking, waiting } = queue;
  if (speaking === undefined) return queue;
  const isWanted = speaking.alertId !== undefined || speaking.asksId !== undefined || speaking.isPart === true;
  const isOvertaken = waiting.some((item) => supersedes(item, speaking));
  const again = isWanted && !isOvertaken ? [speaking] : [];
  return { ...queue, speaking: undefined, waiting: [...again, ...waiting] };
}

/** Parts that nobody waits for any more: the rest of them is asked for. */
const withoutParts = (queue: VoiceQueue, isOver: boolean): VoiceQueue =>
  isOver ? { ...queue, waiting: queue.waiting.filter(({ isPart }) => !isPart) } : queue;

function say(queue: VoiceQueue, input: Extract<VoiceInput, { readonly kind: "say" }>, nowMs: number): Step {
  const { withdrawn = [], closed = [], outdated = [], answered = false } = input;
  const { speaking, waiting } = queue;
  const isGone = ({ alertId, asksId }: QueueItem): boolean =>
    (alertId !== undefined && withdrawn.includes(alertId)) || (asksId !== undefined && closed.includes(asksId));
  const isTrue = (old: QueueItem): boolean =>
    !isGone(old) && !(old.isPart && answered) && !speaksOf(old, outdated) && (old === speaking || !isStale(old, nowMs));
  const before = speaking === undefined ? waiting : [speaking, ...waiting];
  const added = input.items.filter((item) => !before.some((old) => isTrue(old) && isHeardWith(item, old)));
  const fresh = added.map((item, i) => ({ ...item, id: queue.nextId + i, madeAtMs: nowMs }));
  const isReplaced = (old: QueueItem): boolean => fresh.some((item) => supersedes(item, old));
  const kept = waiting.filter((old) => isTrue(old) && !isReplaced(old));
  const untrue = giveBack(before.filter((old) => !isTrue(old) && !isGone(old) && !isReplaced(old)));
  const next = { ...queue, waiting: [...kept, ...fresh], nextId: queue.nextId + fresh.length };
  const isOver = speaking !== undefined && (!isTrue(speaking) || isReplaced(speaking));
  if (!isOver && (speaking === undefined || urgent(speaking) || !fresh.some(urgent))) {
    const [after, effects] = start(next, nowMs);
    return [after, [...untrue, ...effects]];
  }
  const [after, effects] = start(isOver ? { ...next, speaking: undefined } : cutOff(next), nowMs);
  return [after, [...untrue, { kind: "silence" }, ...effects]];
}

/**
 * Who speaks next. One voice at a time; high before medium before replies before low and notices; a high alert cuts in;
 * what is no longer true, was said anew or is older than its data is dropped.
 *
 * @param nowMs Unix ms.
 *
 * Not for: whether something is worth saying; the rules have decided that.
 */
export function queueVoice(queue: VoiceQueue, input: VoiceInput, nowMs: number): Step {
  switch (input.kind) {
    case "say":
      return say(queue, input, nowMs);
    case "ended":
      return queue.speaking?.id === input.id ? start({ ...queue, speaking: undefined }, nowMs) : [queue, []];
    case "userStarted": {
      const { speaking } = queue;
      const hasParts = speaking?.isPart === true || queue.waiting.some(({ isPart }) => isPart);
      const held = hasParts ? { ...queue, partsHeldAtMs: queue.partsHeldAtMs ?? nowMs } : queue;
      if (speaking === undefined) return [{ ...held, userTalks: true }, []];
      const times = (speaking.talkedOver ?? 0) + 1;
      const cut =
        times > AGAIN_MOST
          ? withoutParts({ ...held, speaking: undefined }, speaking.isPart === true)
          : cutOff({ ...held, speaking: { ...speaking, talkedOver: times } });
      return [{ ...cut, userTalks: true, talkedOver: [...queue.talkedOver, speaking.id] }, [{ kind: "silence" }]];
    }
    case "userEnded": {
      const { partsHeldAtMs = nowMs, ...rest } = queue;
      const isLong = nowMs - partsHeldAtMs > REPLY_KEEPS_MS;
      return start(withoutParts({ ...rest, userTalks: false, talkedOver: [] }, isLong), nowMs);
    }
  }
}
