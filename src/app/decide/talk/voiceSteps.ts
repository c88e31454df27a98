import { sayVoiceStep, USUAL_VOICE } from "../../../language/sentences/talk.ts";
import type { VoiceChange } from "../../../language/talkIntent.ts";
import type { CaseState } from "../../../log/caseState.ts";
import { STEPS_EACH_WAY, type VoiceSteps } from "../../../log/talkFacts.ts";
import { FIRST_TALK_SETTINGS } from "../../../log/talkState.ts";
import { answered, type Decision } from "../decision.ts";
import type { Source } from "../recordStatement.ts";

const STEPS: Readonly<Record<Exclude<VoiceChange, "usual">, readonly [what: keyof VoiceSteps, step: 1 | -1]>> = {
  louder: ["volume", 1],
  quieter: ["volume", -1],
  faster: ["pace", 1],
  slower: ["pace", -1],
};

const set = (text: string, steps: VoiceSteps, { heard }: Source): Decision =>
  answered(text, [{ type: "voice.set", ...steps, heard }]);

/** "Louder", "slower": one step, or a word that there is none further. The answer is said in the new manner. */
export function stepVoice({ talk }: CaseState, change: VoiceChange, source: Source): Decision {
  const { pace, volume } = talk;
  if (change === "usual") {
    const usual: VoiceSteps = { pace: FIRST_TALK_SETTINGS.pace, volume: FIRST_TALK_SETTINGS.volume };
    const isUsual = pace === usual.pace && volume === usual.volume;
    return isUsual ? answered(USUAL_VOICE) : set(USUAL_VOICE, usual, source);
  }
  const [what, step] = STEPS[change];
  if (talk[what] * step >= STEPS_EACH_WAY) return answered(sayVoiceStep(what, step, true, false));
  const next = talk[what] + step;
  const isAtEnd = Math.abs(next) === STEPS_EACH_WAY;
  return set(sayVoiceStep(what, step, isAtEnd, true), { pace, volume, [what]: next }, source);
}
