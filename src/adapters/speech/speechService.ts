import type { RecogniserError } from "../../app/ports.ts";

/** The part of the browser's recogniser that is used; a test gives its own. */
export type Recognition = Pick<
  SpeechRecognition,
  | "lang"
  | "continuous"
  | "interimResults"
  | "maxAlternatives"
  | "processLocally"
  | "onstart"
  | "onend"
  | "onerror"
  | "onresult"
  | "onspeechstart"
  | "onspeechend"
  | "start"
  | "stop"
  | "abort"
>;

export type SpeechService = {
  /** Undefined where the browser has no speech recognition. */
  readonly make: (() => Recognition) | undefined;
  /** Whether speech of this language can be recognised without leaving the device, as the browser says. */
  readonly onDevice: (lang: string) => Promise<boolean>;
};

type Constructor = { new (): Recognition; available?: (typeof SpeechRecognition)["available"] };

/** The browser's own service, under its standard or its older name. */
export function browserSpeechService(): SpeechService {
  const names = globalThis as unknown as Readonly<Record<string, Constructor | undefined>>;
  const service = names["SpeechRecognition"] ?? names["webkitSpeechRecognition"];
  if (service === undefined) return { make: undefined, onDevice: () => Promise.resolve(false) };
  return {
    make: () => new service(),
    async onDevice(lang) {
      if (service.available === undefined) return false;
      try {
        return (await service.available({ langs: [lang], processLocally: true })) === "available";
      } catch {
        return false; // a browser that cannot say is taken to send the sound away
      }
    },
  };
}

/** What the browser's own recogniser is worth to a user who cares where the sound goes. */
export async function findBrowserEngine(
  service: SpeechService,
  lang: string,
): Promise<"on-device" | "sends-sound" | "none"> {
  if (service.make === undefined) return "none";
  return (await service.onDevice(lang)) ? "on-device" : "sends-sound";
}

/** What a failure of the service means to the user; undefined for those that are part of listening. */
export function serviceFault(error: SpeechRecognitionErrorEvent["error"]): RecogniserError | undefined {
  switch (error) {
    case "no-speech":
    case "aborted":
      return undefined;
    case "not-allowed":
    case "service-not-allowed":
      return { kind: "microphone-refused" };
    case "audio-capture":
      return { kind: "microphone-lost" };
    case "network":
      return { kind: "load-failed", asset: "the browser's speech service", detail: "it cannot be reached" };
    default:
      return { kind: "not-supported", detail: `the browser's speech recognition says ${error}` };
  }
}
