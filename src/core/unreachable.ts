/** Ends a switch over a closed union: a member without a case is a compile error. */
export function unreachable(value: never): never {
  throw new Error(`no case for ${JSON.stringify(value)}`);
}
