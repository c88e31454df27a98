import {
  BARGE_IN_ENDPOINT,
  lingerAfter,
  OPEN_ENDPOINT,
  SILENCE,
  stepEndpoint,
  type EndpointEvent,
  type EndpointState,
} from "./endpoint.ts";

export type OpenState = {
  readonly endpoint: EndpointState;
  readonly gated: boolean;
  /** Our own voice sounded during this speech: it may hold our own words. */
  readonly tainted: boolean;
  /** `started` was given out, so `ended` is owed. */
  readonly announced: boolean;
  readonly lastProbability: number;
};

export type OpenEvent =
  | { readonly kind: "started"; readonly first: number }
  | {
      readonly kind: "ended";
      readonly first: number;
      readonly last: number;
      /**
       * take: recognise it. doubt: recognise it, but our own voice sounded too. refuse: a person spoke without a pause, and
       * a piece of it may be half a number. drop: too short to be speech.
       */
      readonly fate: "take" | "doubt" | "refuse" | "drop";
    }
  /** What might have gone on (`awaitMore`) did not. */
  | { readonly kind: "expired" };

export const OPEN_SILENCE: OpenState = {
  endpoint: SILENCE,
  gated: false,
  tainted: false,
  announced: false,
  lastProbability: 0,
};

/**
 * Open listening with the gate for our own voice. Pure, one frame of 32 ms a step.
 *
 * @param gated our own voice sounds now, or did a moment ago: only strict voice activity counts, and what it finds
 *              is announced (so that our voice can stop). What a person says over our voice is recognised in doubt.
 *
 * Speech under way when the gate opens that was not announced before (our own voice fading, or somebody in mid-word) is
 * never recognised: its beginning is missing, and the rest of a number is another number.
 */
export function stepOpen(
  before: OpenState,
  frame: number,
  probability: number,
  gated: boolean,
): readonly [OpenState, OpenEvent | undefined] {
  const settings = gated ? BARGE_IN_ENDPOINT : OPEN_ENDPOINT;
  const state = gated === before.gated ? before : moveGate(before, frame, gated);
  const [endpoint, event] = stepEndpoint(state.endpoint, frame, probability, settings);
  const isOpen = endpoint.phase === "speech" || endpoint.phase === "lingering";
  const tainted = isOpen && (state.tainted || gated);
  const announced = isOpen && (state.announced || event?.kind === "started");
  const next = { endpoint, gated, tainted, announced, lastProbability: probability };
  if (event?.kind !== "ended") return [next, event];
  return [next, state.announced ? { ...event, fate: fateOf(event, state.tainted || gated) } : undefined];
}

/** What has just ended might go on: the next speech within `waitMs` is joined to it. */
export function awaitMore(
  state: OpenState,
  ended: { readonly first: number; readonly last: number },
  waitMs: number,
): OpenState {
  return { ...state, endpoint: lingerAfter(ended, waitMs), announced: true };
}

function moveGate(before: OpenState, frame: number, gated: boolean): OpenState {
  if (before.endpoint.phase === "speech" || before.endpoint.phase === "lingering") return { ...before, tainted: true };
  const talkingNow = before.lastProbability >= OPEN_ENDPOINT.stayProbability;
  if (gated || !talkingNow) return { ...before, endpoint: SILENCE };
  // Somebody (or the rest of our own voice in the room) is in mid-word: wait for a pause without a word about it.
  return { ...before, endpoint: { phase: "speech", first: frame, last: frame }, tainted: true };
}

function fateOf(ended: Extract<EndpointEvent, { kind: "ended" }>, tainted: boolean) {
  if (ended.length === "short") return "drop";
  if (ended.length === "long") return "refuse";
  return tainted ? "doubt" : "take";
}
