import type { RunningClock, ProfileStore, Recogniser, Speaker } from "./ports.ts";
import type { Meter } from "./screenView.ts";
import type { Session } from "./session.ts";
import type { TalkState } from "./talkState.ts";

/** What a conversation needs: the case, time, ears and mouth, and somewhere to show itself. */
export type ConversationOptions = {
  readonly session: Session;
  readonly clock: RunningClock;
  readonly speaker: Speaker;
  readonly recogniser: Recogniser;
  readonly profiles: ProfileStore;
  readonly onChange: (talk: TalkState) => void;
  readonly onMeter: (meter: Meter) => void;
};
