/**
 * Cuts a text that ends in a number and a unit before the unit, so that the unit can be set smaller.
 * Purely typographic: the pieces joined by a space are the text again. Any other text stays whole.
 */
export function numberAndUnit(text: string): { readonly main: string; readonly unit: string | undefined } {
  const cut = /^(.*\d) (\D+)$/.exec(text);
  return cut === null ? { main: text, unit: undefined } : { main: cut[1]!, unit: cut[2]! };
}
