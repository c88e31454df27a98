import type { DerivationInput, InputKind } from "../../core/derivation.ts";
import type { Limit } from "../../protocol/resolveTargets.ts";

/** A recorded value as an input of a derivation. */
export const recordedInput = (
  name: string,
  unit: string,
  { value, atMs }: { readonly value: number; readonly atMs: number },
  kind: InputKind = "measured",
): DerivationInput => ({ name, value, unit, kind, atMs });

/** A limit of the protocol as an input, with its place and its source. */
export const limitInput = (name: string, unit: string, { value, path, source }: Limit): DerivationInput => ({
  name,
  value,
  unit,
  kind: "protocol",
  path,
  source,
});
