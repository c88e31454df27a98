import { OFFER_HANDOVER, sayPhase } from "../../../../language/sentences/course.ts";
import { PHASES, type Phase } from "../../../../log/careFacts.ts";
import type { CaseState } from "../../../../log/caseState.ts";
import { selectPhase } from "../../../../log/phase.ts";
import { sentences } from "../../../../language/sentences/sentence.ts";
import { answered, recorded, type Decision } from "../../decision.ts";
import type { Source } from "../../recordStatement.ts";

/** The phase that was called, or the one that follows. Nothing is locked: any may follow any, also backwards. */
export function decidePhase(log: CaseState, called: Phase | "next", source: Source): Decision {
  const now = selectPhase(log);
  const phase = called === "next" ? PHASES[PHASES.indexOf(now) + 1] : called;
  // Said again it changes nothing; after the last there is none.
  if (phase === undefined || phase === now) return answered(sentences(sayPhase(now)));
  const offer = phase === "handOver" ? OFFER_HANDOVER : undefined;
  return recorded(sentences(sayPhase(phase), offer), [{ type: "phase.entered", phase, ...source }]);
}
