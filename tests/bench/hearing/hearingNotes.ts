import type { SetName } from "./speakers.ts";

const VOICES: Readonly<Record<SetName, string>> = {
  tuning:
    "Voices: flite rms, slt, kal16 and espeak-ng with the accents and variants of the listener's training; of espeak-ng two in " +
    "five with variants that training did not have. Noise: the first half, in time, of each recording.",
  test:
    "Voices that took no part in training or tuning: flite awb (length 0.75 to 1.2, pitch ±8 %), espeak-ng with other " +
    "variants, three in ten of these in an accent that was not trained on. The engines themselves were trained on. Noise: the second " +
    "half, in time, of each recording, so another minute of the same machine.",
};

export const statements = (set: SetName): readonly string[] => [
  "Random paths through the grammar, each with one meaning, in voices chosen by chance, at −44 to −20 dBFS, with 0.3 to " +
    "0.8 s of background before it (babble: 6.5 to 7 s, so that the crowd is known as one). “Right at first try” is recorded " +
    "or carried out as said, of the statements that no rule asks about. “Right, or asked by rule” counts those too that are " +
    "asked back however they are heard, if the right value is on offer. An utterance that lost a part counts as wrong. The ratio is that of the speech while speaking to the noise, unweighted. Quiet has a hiss " +
    "40 dB under the speech. Intervals: Wilson, 95 %.",
  VOICES[set],
];

export const DRUGS: readonly string[] = [
  "Drug statements of this version ask for a dose: “wrong” is the dose of another drug, read back with its name and recorded nowhere.",
];

export const PEOPLE: readonly string[] = [
  "Number words, with the grammar of numbers alone, each file one utterance as `hear` takes it; and what the language of an " +
    "open question holds, openly heard. “As mixed” and “as recorded” are the files as they are; other conditions were mixed here. " +
    "Speakers that took part in the training of the listener flatter it: see the column.",
];
