/** The next utterance counts if it begins this long after the call word said alone. */
export const CALL_LASTS_MS = 8_000;
/** Answers count without the call word if they begin this long after our voice has asked. */
export const ANSWER_LASTS_MS = 10_000;

/** Until when (Unix ms) what is said counts without the call word first, and why. `undefined`: not for that reason. */
export type CalledState = {
  readonly calledUntilMs: number | undefined;
  readonly answerUntilMs: number | undefined;
};

export const UNCALLED: CalledState = { calledUntilMs: undefined, answerUntilMs: undefined };

export type CalledInput =
  /** An utterance, by how it begins. `startedAtMs`: when its speech began. */
  | {
      readonly kind: "heard";
      readonly call: "uncalled" | "alone" | "called";
      readonly startedAtMs: number;
      readonly endedAtMs: number;
    }
  /** An utterance that was taken came to something: recorded, asked, answered, refused. */
  | { readonly kind: "understood" }
  /** Whether an answer is waited for: a question is open, or something must be said again. */
  | { readonly kind: "waiting"; readonly waits: boolean; readonly atMs: number }
  /** Our own voice began or ended. */
  | { readonly kind: "voice"; readonly sounding: boolean; readonly waits: boolean; readonly atMs: number };

/** take: it counts. attend: show that the next one will. ignore: nobody called. */
export type CalledEffect = "take" | "attend" | "ignore" | undefined;

const later = (a: number | undefined, b: number): number => Math.max(a ?? b, b);

/** Whether what begins now counts without the call word. */
export const isAttentive = ({ calledUntilMs, answerUntilMs }: CalledState, atMs: number): boolean =>
  atMs <= (calledUntilMs ?? -Infinity) || atMs <= (answerUntilMs ?? -Infinity);

/**
 * Called listening: nothing counts unless the call word came first, in one breath or alone just before, or our own voice
 * has asked and the answer begins soon after it. Pure, total.
 *
 * A call said alone lasts until something was understood or its time is up: a slammed door between must not use it up.
 */
export function stepCalled(state: CalledState, input: CalledInput): readonly [CalledState, CalledEffect] {
  switch (input.kind) {
    case "heard":
      if (input.call === "alone") {
        const calledUntilMs = later(state.calledUntilMs, input.endedAtMs + CALL_LASTS_MS);
        return [{ ...state, calledUntilMs }, "attend"];
      }
      if (input.call === "called") return [state, "take"];
      return [state, isAttentive(state, input.startedAtMs) ? "take" : "ignore"];
    case "understood":
      return [{ ...state, calledUntilMs: undefined }, undefined];
    case "waiting": {
      const answerUntilMs = input.waits ? later(state.answerUntilMs, input.atMs + ANSWER_LASTS_MS) : undefined;
      return [{ ...state, answerUntilMs }, undefined];
    }
    case "voice": {
      // While we still ask, the answer may come over our voice.
      const untilMs = input.sounding ? Infinity : input.atMs + ANSWER_LASTS_MS;
      return [{ ...state, answerUntilMs: input.waits ? untilMs : undefined }, undefined];
    }
  }
}
