import { fail, ok, type Result } from "../core/result.ts";

/** Changes when the fields do. One from another version is not read: five lines make a new one. */
const PROFILE_VERSION = 1;

export const VOICE_VERDICTS = ["well", "doubtful", "badly"] as const;
/** How well a voice is heard: to be taken; to be asked about more often; not to be relied on. */
export type VoiceVerdict = (typeof VOICE_VERDICTS)[number];

/** What five lines told of one voice, one microphone and one room. No sound and no words are in it. */
export type VoiceProfile = {
  readonly version: typeof PROFILE_VERSION;
  /** Unix ms. */
  readonly madeAtMs: number;
  /** The speech alone, dBFS, full band: see `soundShape.ts`. */
  readonly speechDb: number;
  /** What lay behind it, dBFS, full band. */
  readonly noiseDb: number;
  readonly verdict: VoiceVerdict;
};

export type VoiceProfileError =
  { readonly kind: "corrupt"; readonly detail: string } | { readonly kind: "other-version"; readonly version: number };

/** What can be measured, and a little more: rounding puts a level of full scale a hair above zero. */
const LOWEST_DB = -150;

const limited = (value: number, lowest: number): number => Math.min(0, Math.max(lowest, value));

/** A profile from what was measured, within the limits that `readVoiceProfile` checks. Finite numbers only. */
export const makeVoiceProfile = (measured: Omit<VoiceProfile, "version">): VoiceProfile => ({
  ...measured,
  version: PROFILE_VERSION,
  speechDb: limited(measured.speechDb, LOWEST_DB),
  noiseDb: limited(measured.noiseDb, LOWEST_DB),
});

const isBetween = (value: unknown, low: number, high: number): value is number =>
  typeof value === "number" && Number.isFinite(value) && value >= low && value <= high;

/**
 * Reads a profile back from wherever it was kept. Nothing in it is believed that is not of the right kind and within what
 * can be measured.
 *
 * Errors: `corrupt`, naming the first field that is wrong; `other-version`. Not for: a profile just made.
 */
export function readVoiceProfile(stored: unknown): Result<VoiceProfile, VoiceProfileError> {
  if (typeof stored !== "object" || stored === null) return fail({ kind: "corrupt", detail: "not a profile" });
  const { version, madeAtMs, speechDb, noiseDb, verdict } = stored as Readonly<Record<string, unknown>>;
  if (typeof version !== "number") return fail({ kind: "corrupt", detail: "version" });
  if (version !== PROFILE_VERSION) return fail({ kind: "other-version", version });
  if (!isBetween(madeAtMs, 0, Number.MAX_SAFE_INTEGER)) return fail({ kind: "corrupt", detail: "madeAtMs" });
  if (!isBetween(speechDb, LOWEST_DB, 0)) return fail({ kind: "corrupt", detail: "speechDb" });
  if (!isBetween(noiseDb, LOWEST_DB, 0)) return fail({ kind: "corrupt", detail: "noiseDb" });
  const known = VOICE_VERDICTS.find((v) => v === verdict);
  if (known === undefined) return fail({ kind: "corrupt", detail: "verdict" });
  return ok({ version: PROFILE_VERSION, madeAtMs, speechDb, noiseDb, verdict: known });
}
