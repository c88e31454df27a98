import type { ConversationOptions } from "./conversationOptions.ts";
import { mannerOf } from "./manner.ts";
import { Mouth, type WordsEnd } from "./mouth.ts";
import type { Report } from "./session.ts";
import type { TalkState } from "./talkState.ts";
import type { QueueItem } from "./voiceQueue.ts";

export type CaseVoiceParts = Pick<ConversationOptions, "session" | "clock" | "speaker"> & {
  /** The noise of the room without our own voice, dBFS; none before it was measured. */
  readonly roomDb: () => number | undefined;
  readonly onSounding: (sounding: boolean) => void;
  readonly onShow: (change: Partial<TalkState>) => void;
  /** What became of a fact about the voice itself. */
  readonly onReport: (report: Report) => void;
};

/** The mouth of a case: as loud and as fast as its settings and the room ask for, and its words go into the record. */
export function caseVoice({ session, clock, speaker, ...on }: CaseVoiceParts): Mouth {
  /** Nothing waits for the record: the words sound meanwhile. */
  const onWords = ({ text, priority, alertId }: QueueItem): WordsEnd => {
    on.onShow({ lastSpoken: text });
    const named = alertId === undefined ? {} : { alertId };
    const started = session.record({ type: "speech.started", text, priority, ...named }, clock.nowMs());
    void started.then(on.onReport);
    return (how) => {
      const atMs = clock.nowMs();
      const startedId = started.then(({ facts }) => facts[0]?.id ?? "");
      if (how === "ended") void startedId.then((id) => session.spoken(id));
      else void startedId.then((id) => session.record({ type: "speech.cut", startedId: id }, atMs)).then(on.onReport);
    };
  };
  return new Mouth(speaker, {
    clock,
    mannerOf: ({ louder = false }) => mannerOf({ ...session.state.log.talk, noiseDb: on.roomDb(), louder }),
    onSounding: on.onSounding,
    onWords,
    onMute: (lastSpoken) => on.onShow({ lastSpoken }),
    onUnsaid: (alertIds) => void session.takeBack(alertIds),
    onState: (voiceText) => on.onShow({ voiceText }),
  });
}
