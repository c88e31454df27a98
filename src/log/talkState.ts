import type { TalkFact, TalkLevel, VoiceSteps } from "./talkFacts.ts";

/** How the tool is to talk. What the voice has said is in the log alone: nothing is decided by it. */
export type TalkSettings = VoiceSteps & {
  readonly level: TalkLevel;
  /** Unix ms; in the past when nothing is paused. */
  readonly pausedUntilMs: number;
  /** The number of the last fact that somebody said about the talking itself; "disregard" is not about what lies before it. */
  readonly saidAtSeq: number | undefined;
};

export const FIRST_TALK_SETTINGS: TalkSettings = {
  level: "full",
  pace: 0,
  volume: 0,
  pausedUntilMs: -Infinity,
  saidAtSeq: undefined,
};

const SAID: readonly string[] = [
  "alert.acknowledged",
  "alerts.paused",
  "talk.set",
  "voice.set",
] satisfies TalkFact["type"][];

/** With the number of this fact where it is one of those that are said. */
export const markSaid = (talk: TalkSettings, { type }: { readonly type: string }, seq: number): TalkSettings =>
  SAID.includes(type) ? { ...talk, saidAtSeq: seq } : talk;

/** What a fact about the talking changes. */
export function reduceTalk(talk: TalkSettings, fact: Exclude<TalkFact, { readonly type: "alert.acknowledged" }>) {
  switch (fact.type) {
    case "alerts.paused":
      return { ...talk, pausedUntilMs: fact.untilMs };
    case "talk.set":
      return { ...talk, level: fact.level };
    case "voice.set":
      return { ...talk, pace: fact.pace, volume: fact.volume };
    case "speech.started":
    case "speech.cut":
      return talk;
  }
}
