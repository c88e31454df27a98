import { atStake } from "../language/atStake.ts";
import type { Question } from "../log/facts.ts";
import type { Interpretation } from "./interpret.ts";

/**
 * What was heard while it was too loud to hear safely, from a voice that is heard badly, or overdrove the microphone: all
 * that would be recorded, or spoken as a dose, is asked back whatever its margins. A bare number counts only where it agrees
 * with what a question has offered: it was heard twice then. It can only make the app ask. Not for: typed lines.
 */
export function doubtSound(heard: Interpretation, questions: readonly Question[]): Interpretation {
  if (heard.kind !== "meant") return heard;
  const { words, intent } = heard;
  switch (intent.kind) {
    case "vitals":
    case "dose":
    case "howMuch":
      return { kind: "unsure", words, why: "acoustic", intents: [intent] };
    case "number": {
      const isOffered = questions.some((q) => q.candidates.some((c) => c.number === intent.number.value));
      return isOffered && !intent.correction ? heard : { kind: "unclear", words };
    }
    case "unit":
    case "command":
    case "why":
      return heard;
    // Numbers alone, as above; the rest of what is affirmed is read back anyway.
    case "amount":
    case "rate":
      return { kind: "unclear", words };
    default:
      return atStake(intent) === "recorded" ? { kind: "unsure", words, why: "acoustic", intents: [intent] } : heard;
  }
}
