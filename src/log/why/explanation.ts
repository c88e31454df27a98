import type { Derivation, DerivationInput } from "../../core/derivation.ts";

/** Why a number is what it is: read off and said, or worked out. The voice says it in short, the screen whole. */
export type Explanation =
  | {
      readonly kind: "measured";
      readonly input: DerivationInput;
      /** The target it is held against, where there is one. */
      readonly against: DerivationInput | undefined;
    }
  | { readonly kind: "derived"; readonly derivation: Derivation };
