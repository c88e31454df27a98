/** Parts as sentences: each begins with a capital and ends with its own mark or a full stop. Empty parts are left out. */
export function sentences(...parts: readonly (string | undefined)[]): string {
  const said = parts.flatMap((part) => (part === undefined || part === "" ? [] : [part]));
  return said
    .map((part) => part.charAt(0).toUpperCase() + part.slice(1))
    .map((part) => (/[.?!]$/u.test(part) ? part : `${part}.`))
    .join(" ");
}
