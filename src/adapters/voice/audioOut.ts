import { fail, ok, type Result } from "../../core/result.ts";
import type { Mark, SpeakerError } from "../../app/ports.ts";
import { createLine, type Line, type LineOptions } from "./line.ts";
import { renderMark } from "./marks.ts";
import { renderAllTones } from "./tones.ts";

/** Browsers leave `resume()` unanswered, rather than refusing it, until the user has touched the page. */
const RESUME_LIMIT_MS = 400;
const UNLOCKING_EVENTS = ["pointerdown", "keydown"] as const;

export interface AudioOut {
  /** Makes the sound device ready. `audio-blocked`: the browser wants a touch or a key first. */
  open(): Promise<Result<AudioContext, SpeakerError>>;
  line(context: AudioContext, options?: LineOptions): Line;
  /** A short mark beside whatever else sounds; left out, not put off, where sound is blocked. */
  mark(mark: Mark): void;
  silence(): void;
  dispose(): void;
}

/**
 * The page's sound device, made when first needed, and anew after one that stopped taking sound.
 *
 * @param makeContext may throw where there is no sound device.
 * @param page        where the unlocking touch or key is awaited while the browser blocks sound.
 */
export function createAudioOut(makeContext: () => AudioContext, page: EventTarget): AudioOut {
  let context: AudioContext | undefined;
  const lines = new Set<Line>();
  const unlock = () => void context?.resume().catch(() => undefined);
  const awaitTouch = (on: boolean) =>
    UNLOCKING_EVENTS.forEach((name) =>
      on ? page.addEventListener(name, unlock) : page.removeEventListener(name, unlock),
    );

  const make = (): AudioContext => {
    const made = makeContext();
    renderAllTones(made.sampleRate); // before they are needed: the first would hold an alert up
    return made;
  };
  const giveUp = (on: AudioContext) => {
    if (context !== on) return;
    context = undefined;
    void on.close().catch(() => undefined);
  };

  const open = async (): Promise<Result<AudioContext, SpeakerError>> => {
    try {
      context ??= make();
    } catch {
      return fail({ kind: "audio-blocked" });
    }
    const opening = context;
    if (opening.state !== "running") await resumed(opening);
    const running = opening.state === "running";
    awaitTouch(!running);
    return running ? ok(opening) : fail({ kind: "audio-blocked" });
  };

  const line = (on: AudioContext, options?: LineOptions): Line => {
    const opened = createLine(on, options);
    lines.add(opened);
    void opened.settled.then((end) => {
      lines.delete(opened);
      if (end === "stalled") giveUp(on);
    });
    return opened;
  };

  return {
    open,
    line,
    mark: (mark) =>
      void open().then((opened) => {
        if (!opened.ok) return;
        const marking = line(opened.value);
        marking.addTone({ pcm: renderMark(mark, opened.value.sampleRate), sampleRate: opened.value.sampleRate }, 0);
        marking.finish();
      }),
    silence: () => lines.forEach((sounding) => sounding.stop()),
    dispose: () => {
      lines.forEach((sounding) => sounding.stop());
      awaitTouch(false);
      void context?.close().catch(() => undefined);
    },
  };
}

function resumed(context: AudioContext): Promise<void> {
  return new Promise((resolve) => {
    const timer = setTimeout(resolve, RESUME_LIMIT_MS);
    context.resume().then(
      () => (clearTimeout(timer), resolve()),
      () => (clearTimeout(timer), resolve()),
    );
  });
}
