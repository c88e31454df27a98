/** One word for the matcher, with what is needed to keep neighbouring numbers apart. */
export type Piece = {
  readonly word: string;
  /** Where the digits of a number were written as digits: the text they came from, shared by all its words. */
  readonly digits: { readonly written: string; readonly single: boolean } | undefined;
  /** A comma, full stop or line end stood before this word. */
  readonly afterBreak: boolean;
};
