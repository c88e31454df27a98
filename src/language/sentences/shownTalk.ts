import type { TalkLevel, VoiceSteps } from "../../log/talkFacts.ts";
import { showSpan } from "./clock.ts";
import { sentences } from "./sentence.ts";
import { voiceWord } from "./talk.ts";

/** How the tool talks now. What is left of a pause and of standing by in ms; 0: none. */
export type Talking = VoiceSteps & {
  readonly level: TalkLevel;
  readonly pausedForMs: number;
  readonly standsByForMs: number;
};

const LEVELS: Readonly<Record<TalkLevel, string | undefined>> = {
  full: undefined,
  brief: "Brief talk",
  alerts: "Alerts only, readings are not said back",
};

const showLeft = (what: string, leftMs: number): string | undefined =>
  leftMs > 0 ? `${what}, ${showSpan(leftMs)} left` : undefined;

/** What of the talking is not as usual, for the screen: "Brief talk. Alerts paused, 1 min 20 s left." Empty where all is. */
export function showTalking({ level, pausedForMs, standsByForMs, volume, pace }: Talking): string {
  const voice = [voiceWord("volume", volume), voiceWord("pace", pace)].filter((word) => word !== undefined);
  return sentences(
    LEVELS[level],
    showLeft("Alerts paused", pausedForMs),
    showLeft("Standing by", standsByForMs),
    voice.length === 0 ? undefined : `Voice ${voice.join(", ")}`,
  );
}
