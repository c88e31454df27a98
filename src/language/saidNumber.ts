/** A number with the words that said it. `words` keeps the form ("fifteen" or "one five"): the form decides what must be asked back. */
export type SaidNumber = { readonly value: number; readonly words: string };
