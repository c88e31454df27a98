/** One press may come as a key and as a media action too; nobody presses twice in so short a time on purpose. */
const SAME_PRESS_MS = 300;

const KEYS: readonly string[] = ["MediaPlayPause", "MediaPlay", "MediaPause", "HeadsetHook"];
const ACTIONS = ["play", "pause"] as const;

export type MediaKeysParts = {
  /** Where key events arrive: the window. */
  readonly keys: EventTarget;
  /** Undefined where the browser has none. */
  readonly session: Pick<MediaSession, "setActionHandler" | "playbackState"> | undefined;
  /** A silent sound that plays in a loop, not yet playing. Longer than 5 s: shorter ones get no media keys in Chromium. */
  readonly makeSilence: () => Pick<HTMLAudioElement, "play" | "pause">;
  readonly nowMs: () => number;
  /** Such a key was pressed. Its release is never told. */
  readonly onPress: () => void;
};

export type MediaKeys = {
  /** Takes the keys, or leaves them to other players. To be called from a click or tap, or the browser may refuse. */
  setActive(active: boolean): void;
};

/**
 * The play and pause keys of keyboards and headsets. Most systems give them to the page that plays sound, as media actions,
 * so a silent sound plays while they are wanted; some give plain key events, which are taken too.
 *
 * Errors: none; where the browser refuses the sound or has no media session, only key events are left.
 * Not for: volume and track keys, which stay as they are; a headset in its call profile, whose button ends calls.
 * Source: W3C Media Session; W3C UI Events, key values of media and phone keys.
 */
export function createMediaKeys({ keys, session, makeSilence, nowMs, onPress }: MediaKeysParts): MediaKeys {
  let silence: ReturnType<MediaKeysParts["makeSilence"]> | undefined;
  let active = false;
  let lastMs = -Infinity;

  const press = (): void => {
    const sinceMs = nowMs() - lastMs;
    lastMs = nowMs();
    if (sinceMs >= SAME_PRESS_MS) onPress();
  };
  const onKeyDown = (event: Event): void => {
    if (!("key" in event) || !KEYS.includes(String(event.key))) return;
    event.preventDefault();
    if (!("repeat" in event && event.repeat === true)) press();
  };

  const take = (): void => {
    keys.addEventListener("keydown", onKeyDown);
    if (session === undefined) return;
    for (const action of ACTIONS) session.setActionHandler(action, press);
    silence ??= makeSilence();
    silence.play().then(
      () => (session.playbackState = active ? "playing" : "none"),
      () => undefined, // refused without a gesture: the keys may still come as key events
    );
  };

  const leave = (): void => {
    keys.removeEventListener("keydown", onKeyDown);
    if (session === undefined) return;
    for (const action of ACTIONS) session.setActionHandler(action, null);
    session.playbackState = "none";
    silence?.pause();
  };

  return {
    setActive(wanted) {
      if (wanted === active) return;
      active = wanted;
      if (active) take();
      else leave();
    },
  };
}

/** The keys of this page. `silenceUrl`: address of the silent sound. */
export function mediaKeysInPage(silenceUrl: string, onPress: () => void): MediaKeys {
  return createMediaKeys({
    keys: window,
    session: "mediaSession" in navigator ? navigator.mediaSession : undefined,
    makeSilence: () => Object.assign(new Audio(silenceUrl), { loop: true }),
    nowMs: () => performance.now(),
    onPress,
  });
}
