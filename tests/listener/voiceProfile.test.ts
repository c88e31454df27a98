import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { makeVoiceProfile, readVoiceProfile, VOICE_VERDICTS } from "../../src/listener/voiceProfile.ts";

const good = { version: 1, madeAtMs: 5, speechDb: -31, noiseDb: -62, verdict: "well" };

const BAD: readonly (readonly [stored: unknown, detail: string])[] = [
  [undefined, "not a profile"],
  [null, "not a profile"],
  ["well", "not a profile"],
  [{}, "version"],
  [{ ...good, version: "1" }, "version"],
  [{ ...good, madeAtMs: -1 }, "madeAtMs"],
  [{ ...good, madeAtMs: Infinity }, "madeAtMs"],
  [{ ...good, speechDb: 3 }, "speechDb"],
  [{ ...good, speechDb: NaN }, "speechDb"],
  [{ ...good, noiseDb: "-60" }, "noiseDb"],
  [{ ...good, verdict: "superb" }, "verdict"],
];

describe("a profile read back", () => {
  it.each(BAD)("%j is not believed: %s", (stored, detail) => {
    expect(readVoiceProfile(stored)).toEqual({ ok: false, error: { kind: "corrupt", detail } });
  });

  it("of another version is left alone", () => {
    expect(readVoiceProfile({ ...good, version: 2 })).toEqual({
      ok: false,
      error: { kind: "other-version", version: 2 },
    });
  });

  it("is what was kept, and nothing beside it", () => {
    const profile = fc.record({
      version: fc.constant(1),
      madeAtMs: fc.nat(),
      speechDb: fc.double({ min: -150, max: 0, noNaN: true }),
      noiseDb: fc.double({ min: -150, max: 0, noNaN: true }),
      verdict: fc.constantFrom(...VOICE_VERDICTS),
    });
    fc.assert(
      fc.property(profile, (kept) => {
        expect(readVoiceProfile({ ...kept, sound: [1, 2] })).toEqual({ ok: true, value: kept });
      }),
    );
  });

  it("can be read back whatever was measured", () => {
    const measured = fc.record({
      madeAtMs: fc.nat(),
      speechDb: fc.double({ noNaN: true, noDefaultInfinity: true }),
      noiseDb: fc.double({ noNaN: true, noDefaultInfinity: true }),
      verdict: fc.constantFrom(...VOICE_VERDICTS),
    });
    fc.assert(
      fc.property(measured, (found) => {
        const made = makeVoiceProfile(found);
        expect(readVoiceProfile(made)).toEqual({ ok: true, value: made });
      }),
    );
    // Full scale, as sums of rounded numbers give it.
    expect(makeVoiceProfile({ madeAtMs: 1, speechDb: 1e-12, noiseDb: -60, verdict: "well" })).toMatchObject({
      speechDb: 0,
    });
  });

  it("never throws, whatever was stored", () => {
    fc.assert(fc.property(fc.anything(), (stored) => typeof readVoiceProfile(stored).ok === "boolean"));
  });
});
