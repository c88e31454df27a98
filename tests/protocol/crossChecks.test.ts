import { describe, expect, it } from "vitest";
import { showProtocolError } from "../../src/protocol/protocolError.ts";
import { validateProtocol } from "../../src/protocol/validate.ts";
import { bedsideRows } from "./checkRows/bedsideRows.ts";
import type { Change } from "./checkRows/checkRow.ts";
import { medicineRows } from "./checkRows/medicineRows.ts";
import { targetRows } from "./checkRows/targetRows.ts";
import { minimalProtocol } from "./fixtures/minimalProtocol.ts";
import { withValue } from "./fixtures/withValue.ts";

function said(...changes: readonly Change[]): readonly string[] {
  const file = changes.reduce<unknown>((f, [path, value]) => withValue(f, path, value), minimalProtocol());
  const result = validateProtocol(file);
  return result.ok ? [] : result.error.map(showProtocolError);
}

describe.each(Object.entries({ ...targetRows, ...bedsideRows, ...medicineRows }))("%s", (_family, rows) => {
  it.each(rows)("%j", (changes, expected) => expect(said(...changes)).toEqual(expected));
});
