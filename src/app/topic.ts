import type { WatchedCode } from "../protocol/protocol.ts";
import type { ExplainedCode } from "../log/why/explainReading.ts";

/** A number whose reason and age can be asked for. */
export type NumberCode = Exclude<WatchedCode, "cppBound"> | ExplainedCode;

/** A number that was said and can be explained. */
export type Topic =
  { readonly kind: "value"; readonly code: NumberCode } | { readonly kind: "dose"; readonly drugId: string };

export type WhyState = {
  /** The last number that was said. */
  readonly lastNumber: Topic | undefined;
  readonly lastDose: Topic | undefined;
  /** What was last explained, for the screen. */
  readonly shown: Topic | undefined;
};
