import { BARGE_IN_ENDPOINT, HALF_FRAME_SAMPLES, OPEN_ENDPOINT } from "./endpoint.ts";

const PER_SECOND = 16_000 / HALF_FRAME_SAMPLES;

/** Speech this likely is somebody who talks over our voice, if it is also louder by so much than what sounded before. */
const LIKELY = 0.8;
const RISE_DB = 6;
/** What sounded before: our voice as the echo canceller leaves it, with the room. Its upper part, but not its peaks. */
const REMEMBERED = 2 * PER_SECOND;
const FLOOR_SHARE = 0.8;
/** The newest may be the beginning of the speech itself. */
const HELD_BACK = 4;
/** Less than this tells nothing about what sounds: then the model alone decides, and must be sure. */
const ENOUGH = 15;
/** So many sure frames in a row are somebody however soft, as one who is never louder could not interrupt: 256 ms. */
const LASTING_FRAMES = 8;
const SURE = BARGE_IN_ENDPOINT.startProbability;
const LOWEST_POWER = 1e-12;

/** Speech band and treble, in which "s" and "f" are louder than in the band; dB. */
type Level = { readonly band: number; readonly treble: number };

export type BargeIn = {
  /**
   * Call for every half frame.
   *
   * @param bandPower mean square of its speech band.
   * @param isOwn     our voice may be in it, and nobody is known to talk over it: what sounds now is learned.
   */
  measure(half: Float32Array, bandPower: number, isOwn: boolean): void;
  /**
   * @param probability of speech in the two last half frames.
   * @param isWhole     a frame, not one that overlaps two.
   * @returns a probability that is enough for a beginning (`BARGE_IN_ENDPOINT`) only if somebody talks over our voice.
   */
  weigh(probability: number, isWhole: boolean): number;
};

/**
 * Whether somebody talks over our own voice: by two witnesses, the model and the rise of the level, where one alone must
 * wait until it is sure. What was learned of our voice is kept from one sentence to the next.
 *
 * Numbers: this project's choice on tuning voices and halves of noises; `npm run bench -- bargein` measures the others.
 * Errors: none. Not for: what is said; a room that is silent.
 */
export function createBargeIn(): BargeIn {
  const learned: Level[] = [];
  const newest: Level[] = [];
  let previous = 0;
  let sureFrames = 0;

  const isLouder = (): boolean => {
    const now = newest.slice(-2);
    const rise = (of: (level: Level) => number): number => {
      const sorted = Float64Array.from(learned, of).sort();
      return Math.max(...now.map(of)) - sorted[Math.floor(sorted.length * FLOOR_SHARE)]!;
    };
    return rise(({ band }) => band) >= RISE_DB || rise(({ treble }) => treble) >= RISE_DB;
  };

  return {
    measure(half, bandPower, isOwn) {
      let steps = 0;
      for (const x of half) {
        steps += (x - previous) ** 2;
        previous = x;
      }
      newest.push({ band: decibels(bandPower), treble: decibels(steps / half.length) });
      if (newest.length <= HELD_BACK) return;
      const old = newest.shift()!;
      if (!isOwn) return;
      learned.push(old);
      if (learned.length > REMEMBERED) learned.shift();
    },
    weigh(probability, isWhole) {
      if (isWhole) sureFrames = probability >= SURE ? sureFrames + 1 : 0;
      const isOver =
        learned.length < ENOUGH
          ? probability >= SURE
          : probability >= LIKELY && (sureFrames >= LASTING_FRAMES || isLouder());
      return isOver ? Math.max(probability, SURE) : Math.min(probability, OPEN_ENDPOINT.startProbability);
    },
  };
}

const decibels = (power: number): number => 10 * Math.log10(Math.max(LOWEST_POWER, power));
