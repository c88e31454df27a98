import type { HearingEvent, RecogniserError } from "../../app/ports.ts";

type Part = "worker" | "microphone" | "sound" | "voice";

export type FaultBoard = {
  /** Tells of a fault of this part, unless it is told already. */
  raise(part: Part, error: RecogniserError): void;
  /** The part works again; when all do, `recovered` is told. */
  clear(part: Part): void;
  /** Forgets everything without a word, when listening ends. */
  reset(): void;
};

/** Keeps what is broken now, so that the user hears of each fault once and of recovery only when hearing works. */
export function createFaultBoard(emit: (event: HearingEvent) => void): FaultBoard {
  const broken = new Set<Part>();
  return {
    raise(part, error) {
      if (broken.has(part)) return;
      broken.add(part);
      emit({ kind: "fault", error });
    },
    clear(part) {
      if (broken.delete(part) && broken.size === 0) emit({ kind: "recovered" });
    },
    reset: () => broken.clear(),
  };
}
