import { fail, ok, type Result } from "../../core/result.ts";
import type { SpeakerError } from "../../app/ports.ts";

export type Outcome = Result<"ended" | "cancelled", SpeakerError>;

export interface Utterances {
  /**
   * Cancels what sounds and says the next. Settles exactly once: with what `say` gives, or with what ended it earlier.
   *
   * @param say  told by its argument whether it still is the one to be heard. A rejection counts as a dead voice.
   * @param stop silences it; called once, when it is settled.
   */
  next(say: (isCurrent: () => boolean) => Promise<Outcome>, stop: () => void): Promise<Outcome>;
  /** Settles what sounds, if anything does. */
  end(outcome: Outcome): void;
}

/** One utterance at a time, whatever the voice. */
export function createUtterances(): Utterances {
  let current: ((outcome: Outcome) => void) | undefined;
  const end = (outcome: Outcome): void => current?.(outcome);
  return {
    end,
    next: (say, stop) =>
      new Promise((resolve) => {
        end(ok("cancelled"));
        const settle = (outcome: Outcome): void => {
          if (current !== settle) return;
          current = undefined;
          stop();
          resolve(outcome);
        };
        current = settle;
        say(() => current === settle).then(settle, (thrown: unknown) =>
          settle(fail({ kind: "worker-died", detail: String(thrown) })),
        );
      }),
  };
}
