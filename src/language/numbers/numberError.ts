/** Why words are not one number. `at` is the position of the word that does not fit; one past the last when words are missing. */
export type NumberError =
  | { readonly kind: "empty" }
  | { readonly kind: "unknown-word"; readonly word: string; readonly at: number }
  | { readonly kind: "not-one-number"; readonly at: number }
  | { readonly kind: "too-many-digits"; readonly max: number };
