import type { Mark } from "../../app/ports.ts";
import { onceEach, renderPulses, type Pulse, type Timbre } from "./renderPulses.ts";

/**
 * Five short sounds, told apart by direction: one high blip, two rising, one long low, two level, two falling. All figures
 * are ours.
 * Few partials, a long soft edge and a low peak keep them from being taken for an alert.
 */
const MARKS: Readonly<Record<Mark, readonly Pulse[]>> = {
  heard: [{ onsetMs: 0, lengthMs: 50, fundamentalHz: 1050 }],
  asked: [
    { onsetMs: 0, lengthMs: 50, fundamentalHz: 620 },
    { onsetMs: 65, lengthMs: 50, fundamentalHz: 930 },
  ],
  refused: [{ onsetMs: 0, lengthMs: 115, fundamentalHz: 240 }],
  called: [
    { onsetMs: 0, lengthMs: 40, fundamentalHz: 800 },
    { onsetMs: 70, lengthMs: 40, fundamentalHz: 800 },
  ],
  mute: [
    { onsetMs: 0, lengthMs: 50, fundamentalHz: 620 },
    { onsetMs: 65, lengthMs: 50, fundamentalHz: 310 },
  ],
};

const TIMBRE: Timbre = { partialsDb: [0, -14], edge: 0.35, peak: 0.2 };

/** A sound of at most 120 ms that says "heard", "asking", "not taken", "go ahead" or "read the screen" without words. */
export const renderMark = onceEach((mark: Mark, sampleRate) => renderPulses(MARKS[mark], TIMBRE, sampleRate));
