import { describe, expect, it } from "vitest";
import { createMemoryFactStore } from "../../src/adapters/storage/memoryFactStore.ts";
import { Session } from "../../src/app/session.ts";
import { testContext } from "./playCase.ts";

const T0 = 1_800_000_000_000;

/** What the last of these lines makes old. */
async function outdatedBy(...lines: readonly string[]): Promise<readonly string[]> {
  const session = new Session({ context: testContext(), store: createMemoryFactStore(), newCaseId: () => "c" });
  await session.start(T0);
  let outdated: readonly string[] = [];
  for (const [i, words] of lines.entries()) {
    const atMs = T0 + 1000 * i;
    const said = await session.hear({ by: "typed", candidates: [{ words, score: 0 }], endedAtMs: atMs }, atMs);
    ({ outdated } = said);
  }
  return [...outdated].sort();
}

describe("numbers that a turn makes old", () => {
  it.each([
    [["heart rate 90"], ["hr"]],
    [["120/80"], ["cpp", "dbp", "map", "sbp"]],
    [["map 65"], ["cpp", "map"]],
    [["icp 22"], ["cpp", "icp"]],
    [["eyes two, verbal one, motor five"], ["gcs", "gcsEye", "gcsMotor", "gcsVerbal"]],
    [["left pupil fixed"], ["pupilLeft"]],
    [["sats 96", "sats 96"], ["spo2"]],
    [["sats 96", "correction 94"], ["spo2"]],
    [["heart rate 90", "disregard"], ["hr"]],
    [["heart rate 90", "status"], []],
    [["icp fifteen"], []],
    [["suction ready"], []],
  ])("%j: %j", async (lines, codes) => {
    expect(await outdatedBy(...lines)).toEqual(codes);
  });
});
