import type { RecogniserError } from "../../app/ports.ts";
import { fail, ok, type Result } from "../../core/result.ts";

/** An open microphone. */
export type Microphone = {
  readonly rateHz: number;
  /** Sends blocks of sound through this port from now on. */
  connect(port: MessagePort): void;
  /** Tries to wake a suspended audio context; does nothing when it runs. */
  resume(): void;
  /** Releases the device: the browser's recording mark goes out. */
  stop(): void;
};

/** Echo cancellation keeps our own voice out. The other two reshape speech in ways the network was not trained for. */
const CONSTRAINTS: MediaTrackConstraints = {
  echoCancellation: true,
  noiseSuppression: false,
  autoGainControl: false,
  channelCount: 1,
};

/**
 * Asks for the microphone and carries its sound to a port.
 *
 * @param captureUrl address of the built `captureWorklet.ts`.
 * @param onLost     the device went away (unplugged, taken by the system, permission withdrawn).
 * Errors: `microphone-refused` (the user or the browser said no), `microphone-lost` (none there, or in use elsewhere),
 * `not-supported` (no secure page, no AudioWorklet). Settles only when the user has answered the browser's question.
 */
export async function openMicrophone(
  captureUrl: string,
  onLost: () => void,
): Promise<Result<Microphone, RecogniserError>> {
  // Missing, whatever the types say, on pages that are not secure.
  const devices = navigator.mediaDevices as MediaDevices | undefined;
  if (devices === undefined || typeof AudioWorkletNode === "undefined")
    return fail({
      kind: "not-supported",
      detail: "this page cannot reach a microphone (HTTPS and AudioWorklet needed)",
    });
  let stream: MediaStream;
  try {
    stream = await devices.getUserMedia({ audio: CONSTRAINTS });
  } catch (error) {
    return fail(whyNotOpened(error));
  }
  try {
    return ok(await carrySound(stream, captureUrl, onLost));
  } catch (error) {
    for (const track of stream.getTracks()) track.stop();
    return fail({ kind: "not-supported", detail: `audio capture did not start: ${textOf(error)}` });
  }
}

async function carrySound(stream: MediaStream, captureUrl: string, onLost: () => void): Promise<Microphone> {
  const context = new AudioContext({ latencyHint: "interactive" });
  try {
    await context.audioWorklet.addModule(captureUrl);
    const source = context.createMediaStreamSource(stream);
    const capture = new AudioWorkletNode(context, "tragus-capture", { channelCount: 1, channelCountMode: "explicit" });
    source.connect(capture);
    // Its output is silence; without a way to the speaker some browsers never run the node.
    capture.connect(context.destination);
    const resume = () => {
      if (context.state !== "running" && context.state !== "closed") void context.resume().catch(() => undefined);
    };
    const gestures = ["pointerdown", "keydown"] as const; // where a browser wants a gesture before sound may flow
    for (const gesture of gestures) document.addEventListener(gesture, resume, { passive: true });
    for (const track of stream.getTracks()) track.addEventListener("ended", onLost);
    resume();
    return {
      rateHz: context.sampleRate,
      connect: (port) => capture.port.postMessage({ to: port }, [port]),
      resume,
      stop() {
        for (const gesture of gestures) document.removeEventListener(gesture, resume);
        for (const track of stream.getTracks()) {
          track.removeEventListener("ended", onLost);
          track.stop();
        }
        capture.port.postMessage({});
        source.disconnect();
        capture.disconnect();
        void context.close().catch(() => undefined);
      },
    };
  } catch (error) {
    void context.close().catch(() => undefined);
    throw error;
  }
}

function whyNotOpened(error: unknown): RecogniserError {
  const name = error instanceof DOMException ? error.name : "";
  if (name === "NotAllowedError" || name === "SecurityError") return { kind: "microphone-refused" };
  if (name === "NotFoundError" || name === "NotReadableError" || name === "AbortError")
    return { kind: "microphone-lost" };
  return { kind: "not-supported", detail: textOf(error) };
}

const textOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));
