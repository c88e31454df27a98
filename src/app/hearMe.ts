import { makeVoiceProfile, type VoiceProfile } from "../listener/voiceProfile.ts";
import type { HeardLine, LineMeasure } from "./hearMeLine.ts";
import { HEAR_ME_LINES } from "./hearMeLines.ts";
import { median } from "./median.ts";
import { verdictOfVoice, type LineOutcome } from "./hearMeVerdict.ts";

/** A line is waited for so long after our voice has asked for it … */
export const LINE_WAIT_MS = 12_000;
/** … and so long after it was put into words, in case our voice is never heard. */
export const ASK_WAIT_MS = 30_000;
/** Two lines in a row of which nothing at all was heard: nobody is talking. */
const SILENT_LINES = 2;

/** What became of one line. `measure`: of the utterance that counts, where there was one. */
export type LineResult = { readonly outcome: LineOutcome; readonly measure: LineMeasure | undefined };

export type HearMe =
  | { readonly kind: "idle" }
  | {
      readonly kind: "running";
      /** The lines that are done; the next of `HEAR_ME_LINES` is being asked for. */
      readonly results: readonly LineResult[];
      /** What came of the first try, when this is the second. */
      readonly firstTry: LineResult | undefined;
      /** Unix ms at which the line counts as not heard. */
      readonly untilMs: number;
    };

/** Why it ended without a result. */
export type HearMeEnd = "skipped" | "interrupted" | "silence" | "unmeasured";

export type HearMeInput =
  | { readonly kind: "start"; readonly nowMs: number }
  | { readonly kind: "heard"; readonly heard: HeardLine; readonly nowMs: number }
  /** Our voice has fallen silent: now the user can talk. */
  | { readonly kind: "voiceEnded"; readonly nowMs: number }
  | { readonly kind: "tick"; readonly nowMs: number }
  /** By a button. */
  | { readonly kind: "skip" }
  /** Something more urgent: an alert, or work on the case. */
  | { readonly kind: "interrupt" };

export type HearMeEffect =
  | { readonly kind: "ask"; readonly line: string; readonly isFirst: boolean }
  /** `heard`: other words than the line's, empty when nothing was. */
  | { readonly kind: "askAgain"; readonly line: string; readonly heard: string }
  | { readonly kind: "finished"; readonly profile: VoiceProfile }
  | { readonly kind: "ended"; readonly why: HearMeEnd };

export const HEAR_ME_IDLE: HearMe = { kind: "idle" };

type Running = Extract<HearMe, { kind: "running" }>;
type Step = readonly [HearMe, readonly HearMeEffect[]];

/** The line that is being asked for. */
export const lineOf = ({ results }: Running): string => HEAR_ME_LINES[results.length] ?? "";

const end = (why: HearMeEnd): Step => [HEAR_ME_IDLE, [{ kind: "ended", why }]];

function ask(results: readonly LineResult[], nowMs: number): Step {
  const next: Running = { kind: "running", results, firstTry: undefined, untilMs: nowMs + ASK_WAIT_MS };
  return [next, [{ kind: "ask", line: lineOf(next), isFirst: results.length === 0 }]];
}

function finish(results: readonly LineResult[], nowMs: number): Step {
  const measures = results.flatMap(({ measure }) => measure ?? []);
  const speechDb = median(measures.map((m) => m.speechDb));
  const noiseDb = median(measures.map((m) => m.noiseDb));
  if (speechDb === undefined || noiseDb === undefined) return end("silence");
  const profile = makeVoiceProfile({
    madeAtMs: nowMs,
    speechDb,
    noiseDb,
    verdict: verdictOfVoice(results.map(({ outcome }) => outcome)),
  });
  return [HEAR_ME_IDLE, [{ kind: "finished", profile }]];
}

const isSilent = ({ outcome, measure }: LineResult): boolean => outcome === "missed" && measure === undefined;

/** One try at a line is over: it is asked for once more, or done. */
function settle(state: Running, tried: LineResult, heard: string, nowMs: number): Step {
  const { results, firstTry } = state;
  const isDone = tried.outcome === "right" || tried.outcome === "unsure" || firstTry !== undefined;
  if (!isDone) {
    const again: Running = { ...state, firstTry: tried, untilMs: nowMs + ASK_WAIT_MS };
    return [again, [{ kind: "askAgain", line: lineOf(state), heard }]];
  }
  // Right only at the second try is no voice that is heard well.
  const outcome = firstTry !== undefined && tried.outcome === "right" ? "unsure" : tried.outcome;
  const measure = tried.measure ?? firstTry?.measure;
  const done = [...results, { outcome, measure }];
  if (done.length >= SILENT_LINES && done.slice(-SILENT_LINES).every(isSilent)) return end("silence");
  return done.length < HEAR_ME_LINES.length ? ask(done, nowMs) : finish(done, nowMs);
}

function hear(state: Running, heard: HeardLine, nowMs: number): Step {
  switch (heard.kind) {
    case "ownVoice":
      return [state, []];
    case "unmeasured":
      return end("unmeasured");
    case "command": {
      if (heard.command !== "sayAgain") return end("skipped");
      return [{ ...state, untilMs: nowMs + ASK_WAIT_MS }, [{ kind: "ask", line: lineOf(state), isFirst: false }]];
    }
    case "line":
      return settle(state, heard, heard.outcome === "wrong" ? heard.words : "", nowMs);
  }
}

/**
 * "Hear me": five short lines, each asked for, repeated by the user and judged. Pure; time comes in.
 *
 * It always ends: with a profile, or with a reason why there is none. Any command but "say again" ends it. It knows no
 * facts and makes none. Not for: choosing words; storing.
 */
export function stepHearMe(state: HearMe, input: HearMeInput): Step {
  if (state.kind === "idle") return input.kind === "start" ? ask([], input.nowMs) : [state, []];
  switch (input.kind) {
    case "start":
      return [state, []];
    case "heard":
      return hear(state, input.heard, input.nowMs);
    case "voiceEnded":
      return [{ ...state, untilMs: input.nowMs + LINE_WAIT_MS }, []];
    case "tick":
      if (input.nowMs < state.untilMs) return [state, []];
      return settle(state, { outcome: "missed", measure: undefined }, "", input.nowMs);
    case "skip":
      return end("skipped");
    case "interrupt":
      return end("interrupted");
  }
}
