import type { SettingsView } from "./screenView.ts";

export type Engine = SettingsView["engines"][number]["id"];

/** What the user may choose between, and what is chosen. Choices last as long as the page. */
export type Settings = {
  readonly engine: Engine;
  /** Missing where the browser has no recogniser of its own. */
  readonly browserEngine: "on-device" | "sends-sound" | "none";
  /** The user has chosen the browser's recogniser and has not yet answered the question below. */
  readonly consentOpen: boolean;
  readonly voices: readonly { readonly id: string; readonly name: string }[];
  /** Undefined: the built-in voice. */
  readonly voiceId: string | undefined;
};

export const firstSettings: Settings = {
  engine: "built-in",
  browserEngine: "none",
  consentOpen: false,
  voices: [],
  voiceId: undefined,
};

export type SettingsInput =
  | { readonly kind: "engine"; readonly engine: Engine }
  | { readonly kind: "consent"; readonly agreed: boolean }
  | { readonly kind: "voice"; readonly id: string | undefined }
  | { readonly kind: "browserEngine"; readonly found: Settings["browserEngine"] }
  | { readonly kind: "voices"; readonly voices: Settings["voices"] };

/** Sound leaves the device only after the user was told and agreed: until then the built-in engine goes on listening. */
export function changeSettings(settings: Settings, input: SettingsInput): Settings {
  switch (input.kind) {
    case "engine":
      if (input.engine === "browser" && settings.browserEngine === "none") return settings;
      if (input.engine === "browser" && settings.browserEngine === "sends-sound" && settings.engine !== "browser")
        return { ...settings, consentOpen: true };
      return { ...settings, engine: input.engine, consentOpen: false };
    case "consent":
      if (!settings.consentOpen) return settings;
      return { ...settings, consentOpen: false, engine: input.agreed ? "browser" : settings.engine };
    case "voice":
      return { ...settings, voiceId: settings.voices.some((v) => v.id === input.id) ? input.id : undefined };
    case "browserEngine":
      return { ...settings, browserEngine: input.found };
    case "voices":
      return { ...settings, voices: input.voices };
  }
}

const CONSENT =
  "The recogniser of this browser may send what the microphone hears to its maker. It gives no measure of how sure it is, so more is asked back. Use it?";

export function viewSettings(settings: Settings): SettingsView {
  const browser = {
    id: "browser",
    label:
      settings.browserEngine === "on-device" ? "This browser's, on the device" : "This browser's, may send sound away",
    chosen: settings.engine === "browser",
  } as const;
  return {
    engines: [
      { id: "built-in", label: "Built in, on the device", chosen: settings.engine === "built-in" },
      ...(settings.browserEngine === "none" ? [] : [browser]),
    ],
    consent: settings.consentOpen ? CONSENT : undefined,
    voices: [
      { id: undefined, label: "Built in", chosen: settings.voiceId === undefined },
      ...settings.voices.map(({ id, name }) => ({ id, label: name, chosen: id === settings.voiceId })),
    ],
  };
}
