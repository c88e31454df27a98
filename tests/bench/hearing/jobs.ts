import type { GrammarName } from "../lab.ts";
import type { Statement } from "./statements.ts";

/** One piece of work for a worker: what to let sound, and into what. Everything else comes from the seed. */
export type Job =
  | { readonly kind: "statement"; readonly seed: number; readonly condition: string; readonly statement: Statement }
  | {
      readonly kind: "talk";
      readonly seed: number;
      readonly condition: string;
      readonly material: "talk" | "near the language";
      readonly words: string;
    }
  | {
      readonly kind: "noise";
      readonly seed: number;
      readonly condition: string;
      readonly classes: readonly string[];
      readonly seconds: number;
    }
  | {
      readonly kind: "person";
      readonly seed: number;
      readonly condition: string;
      /** Of the list of recordings: file, words, speaker, sex, accent. */
      readonly recording: Recording;
      readonly state: GrammarName;
    };

export type Recording = {
  readonly file: string;
  readonly words: string;
  readonly speaker: string;
  readonly sex: string;
  readonly accent: string;
  readonly kind: string;
};
