import type { NewItem, VoiceEffect, VoiceInput } from "../../src/app/voiceQueue.ts";

/** An item with words of its own, so that what sounds tells which item it is. */
export type Said = NewItem & { readonly name: string; readonly madeAtMs: number };

/** What one input did, as a listener in the room would tell it. */
export type Heard = {
  readonly silenced: boolean;
  readonly started: Said | undefined;
  readonly back: readonly string[];
};

/** How long what is said stays worth saying, in the words of the design: 12 s for a reply, 15 s for an alert's number. */
export function isTooOld(said: Said, nowMs: number): boolean {
  const ageMs = nowMs - said.madeAtMs;
  if (said.asksId !== undefined || said.text === "") return false;
  if (said.alertId === undefined) return said.priority === "none" && ageMs > 12_000;
  return said.about !== undefined && ageMs > 15_000;
}

/**
 * What is still owed to the listener, kept by plain rules about single items and never by an order: the judge of the
 * queue. It knows what sounds from the queue's effects alone.
 */
export class OwedModel {
  owed: Said[] = [];
  sounding: Said | undefined;
  userTalks = false;
  /** Talked over since the user began. */
  over: Said[] = [];
  /** Alerts that must be given back with the input at hand, because it made their words untrue. */
  toGiveBack: string[] = [];
  readonly #times = new Map<Said, number>();

  /** The input's own consequences, before its effects. `items` are those of a "say", named. */
  take(input: VoiceInput, items: readonly Said[], nowMs: number): void {
    this.toGiveBack = [];
    if (input.kind === "userStarted") {
      this.userTalks = true;
      const { sounding } = this;
      if (sounding !== undefined) {
        this.over.push(sounding);
        this.#times.set(sounding, (this.#times.get(sounding) ?? 0) + 1);
        // Begun thrice, and thrice talked over: no more.
        if (this.#times.get(sounding) === 3) this.owed = this.owed.filter((o) => o !== sounding);
      }
    }
    if (input.kind === "userEnded") {
      this.userTalks = false;
      this.over = [];
    }
    if (input.kind === "say") this.#hearNews(input, items, nowMs);
  }

  /** Its words have come to their end. */
  finish(): void {
    this.owed = this.owed.filter((o) => o !== this.sounding);
    this.sounding = undefined;
  }

  /** Effects, as they come out. */
  hear(effects: readonly VoiceEffect[], nameOf: (item: NewItem & { readonly id: number }) => Said): Heard {
    const silenced = effects.some((e) => e.kind === "silence");
    const back = effects.flatMap((e) => (e.kind === "unsaid" ? e.alertIds : []));
    const spoken = effects.flatMap((e) => (e.kind === "speak" ? [nameOf(e.item)] : []));
    if (silenced) {
      const cut = this.sounding;
      // A plain reply that was cut off is nobody's any more; a notice, an alert and a question are.
      if (cut?.alertId === undefined && cut?.asksId === undefined) this.owed = this.owed.filter((o) => o !== cut);
      this.sounding = undefined;
    }
    this.owed = this.owed.filter((o) => o.alertId === undefined || !back.includes(o.alertId) || spoken.includes(o));
    const [started] = spoken;
    if (started !== undefined) this.sounding = started;
    return { silenced, started, back };
  }

  #hearNews(input: Extract<VoiceInput, { kind: "say" }>, items: readonly Said[], nowMs: number): void {
    const { withdrawn = [], closed = [], outdated = [] } = input;
    const isGone = (o: Said) => withdrawn.includes(o.alertId ?? "-") || closed.includes(o.asksId ?? "-");
    const isOld = (o: Said) => o.text !== "" && (o.about ?? []).some((code) => outdated.includes(code));
    const order = ["high", "medium", "none", "low"];
    const isSaidAnyway = (tone: Said) =>
      tone.text === "" &&
      this.owed.some(
        (o) =>
          o.alertId === tone.alertId &&
          o.text !== "" &&
          !isGone(o) &&
          !isOld(o) &&
          (o === this.sounding || !isTooOld(o, nowMs)) &&
          order.indexOf(o.priority) <= order.indexOf(tone.priority),
      );
    const added = items.filter((item) => !isSaidAnyway(item));
    const isReply = (o: Said) => o.alertId === undefined && o.priority === "none";
    const isReplaced = (o: Said) =>
      added.some((item) => (item.alertId === undefined ? isReply(item) && isReply(o) : item.alertId === o.alertId));
    for (const o of this.owed)
      if (isOld(o) && !isGone(o) && !isReplaced(o) && o.alertId !== undefined && o.priority !== "none")
        this.toGiveBack.push(o.alertId);
    this.owed = [...this.owed.filter((o) => !isGone(o) && !isOld(o) && !isReplaced(o)), ...added];
  }
}
