/** What is said of the case as a whole: begin another, erase this one, what it is called. */
export type CaseIntent =
  | { readonly kind: "newCase"; readonly rehearsal: boolean }
  /** With the label of the case: the answer to "say: erase kilo four seven". */
  | { readonly kind: "eraseCase"; readonly label?: string }
  | { readonly kind: "whichCase" };
