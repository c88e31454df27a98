import { STEPS_EACH_WAY, type VoiceSteps } from "../log/talkFacts.ts";
import type { Spoken } from "./ports.ts";

/**
 * A room no louder than this needs no louder voice. dBFS of the meter, which stands for no sound pressure: what a quiet room
 * reads depends on the microphone. This project's choice, not measured.
 */
const QUIET_DB = -60;
/** People raise their voice by some half of what the noise rises; a loudspeaker need not. This project's choice. */
const GAIN_PER_DB = 0.7;
/** Past that a small loudspeaker only distorts. This project's choice. */
const ROOM_GAIN_MOST_DB = 14;
const STEP_DB = 4;
const LOUDER_DB = 6;
const PACES = [0.8, 0.9, 1, 1.1, 1.2] as const;

export type MannerInput = VoiceSteps & {
  /** The room without our own voice, dBFS; none before anything was measured. */
  readonly noiseDb: number | undefined;
  /** Nobody has acknowledged what is said. */
  readonly louder: boolean;
};

/** How something is said now: as fast and as loud as was asked for, and louder in noise. Errors: none. */
export function mannerOf({
  noiseDb = QUIET_DB,
  pace,
  volume,
  louder,
}: MannerInput): Required<Pick<Spoken, "pace" | "gainDb">> {
  const roomDb = Math.min(ROOM_GAIN_MOST_DB, GAIN_PER_DB * Math.max(0, noiseDb - QUIET_DB));
  const gainDb = roomDb + STEP_DB * volume + (louder ? LOUDER_DB : 0);
  return { pace: PACES[pace + STEPS_EACH_WAY] ?? 1, gainDb };
}
