import { fail, ok, type Result } from "../../core/result.ts";
import type { Mark, SpeakerError } from "../../app/ports.ts";
import { createLine, type Line } from "./line.ts";
import { renderMark } from "./marks.ts";

/** Browsers leave `resume()` unanswered, rather than refusing it, until the user has touched the page. */
const RESUME_LIMIT_MS = 400;
const UNLOCKING_EVENTS = ["pointerdown", "keydown"] as const;

export interface AudioOut {
  /** Makes the sound device ready. `audio-blocked`: the browser wants a touch or a key first. */
  open(): Promise<Result<AudioContext, SpeakerError>>;
  line(context: AudioContext, notBeforeS?: number): Line;
  /** A short mark beside whatever else sounds; left out, not put off, where sound is blocked. */
  mark(mark: Mark): void;
  silence(): void;
  dispose(): void;
}

/**
 * The page's sound device, made when first needed.
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

  const open = async (): Promise<Result<AudioContext, SpeakerError>> => {
    try {
      context ??= makeContext();
    } catch {
      return fail({ kind: "audio-blocked" });
    }
    const opening = context;
    if (opening.state !== "running") await resumed(opening);
    const running = opening.state === "running";
    awaitTouch(!running);
    return running ? ok(opening) : fail({ kind: "audio-blocked" });
  };

  const line = (on: AudioContext, notBeforeS = 0): Line => {
    const opened = createLine(on, notBeforeS);
    lines.add(opened);
    void opened.settled.then(() => lines.delete(opened));
    return opened;
  };

  return {
    open,
    line,
    mark: (mark) =>
      void open().then((opened) => {
        if (!opened.ok) return;
        const marking = line(opened.value);
        marking.add({ pcm: renderMark(mark, opened.value.sampleRate), sampleRate: opened.value.sampleRate }, 0);
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
