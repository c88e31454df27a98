import type { Noise } from "./audioSet.ts";
import type { Voice } from "./synth.ts";

const NO_PEOPLE = "The folder of recordings (`../shared/audio`) is not here: people and noise were skipped.";
const INTERVALS = "95 % intervals by Wilson.";

const names = (voices: readonly Voice[], inTraining: boolean): string =>
  voices
    .filter((voice) => voice.inTraining === inTraining)
    .map((voice) => voice.name)
    .join("; ");

export const madeVoices = (voices: readonly Voice[], noises: readonly Noise[]): readonly string[] => [
  "Each phrase of the language once in each condition, in a voice chosen by chance. “Right at once” is recorded or " +
    "carried out as said; an utterance that lost a part counts as wrong. “Asked by rule”: the same words typed are " +
    `asked back too. ${INTERVALS}`,
  noises.length === 0
    ? `${NO_PEOPLE} Only quiet was measured.`
    : `Noise: ${noises.length} recordings, chosen by chance. The ratio is that of the speech while speaking to the ` +
      "noise, unweighted. Quiet has a hiss 40 dB under the speech.",
  `Voices that took part in the training of the listener and flatter it: ${names(voices, true)}. ` +
    `Not heard in training: ${names(voices, false)}.`,
];

export const people = (areHere: boolean): readonly string[] =>
  areHere
    ? [
        "Grammar of numbers alone. AN4, Free Spoken Digit Dataset and others, with the noise that the recordings came " +
          "with. A number that does not pass both thresholds of taking counts as refused; in the app it is asked back. " +
          `The listener was trained on speakers of AN4, so these recordings flatter it. ${INTERVALS}`,
      ]
    : [NO_PEOPLE];

export const FALSE_ACCEPTS: readonly string[] = [
  "Hours are those of the sounds played, with 1.7 s of room a clip. The clips follow each other without rest, so an " +
    "hour here holds far more speech than an hour of work. “Near the language” was made to be mistaken for it. " +
    "Upper bounds: exact Poisson, two-sided 95 %.",
];
