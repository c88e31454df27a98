import { describe, expect, it } from "vitest";
import { createMediaKeys } from "../../../src/adapters/media/mediaKeys.ts";

function rig({ hasSession = true, refuses = false } = {}) {
  const keys = new EventTarget();
  const handlers = new Map<string, MediaSessionActionHandler | null>();
  const session = {
    playbackState: "none" as MediaSessionPlaybackState,
    setActionHandler: (action: MediaSessionAction, handler: MediaSessionActionHandler | null) =>
      void handlers.set(action, handler),
  };
  const sound: string[] = [];
  let now = 0;
  let presses = 0;
  const media = createMediaKeys({
    keys,
    session: hasSession ? session : undefined,
    makeSilence: () => ({
      play: () => {
        sound.push("play");
        return refuses ? Promise.reject(new Error("no gesture")) : Promise.resolve();
      },
      pause: () => void sound.push("pause"),
    }),
    nowMs: () => now,
    onPress: () => void presses++,
  });
  const key = (name: string, repeat = false) => {
    const event = new Event("keydown", { cancelable: true });
    Object.defineProperties(event, { key: { value: name }, repeat: { value: repeat } });
    keys.dispatchEvent(event);
    return event;
  };
  const action = (name: MediaSessionAction) => handlers.get(name)?.({ action: name });
  return { media, session, sound, key, action, handlers, wait: (ms: number) => (now += ms), presses: () => presses };
}

const settle = () => new Promise<void>((resolve) => setTimeout(resolve));

describe("media keys", () => {
  it.each(["MediaPlayPause", "MediaPlay", "MediaPause", "HeadsetHook"])("takes the key %s once a press", (name) => {
    const { media, key, presses, wait } = rig();
    media.setActive(true);
    wait(1000);
    expect(key(name).defaultPrevented).toBe(true);
    wait(1000);
    key(name, true); // held down: it repeats
    expect(presses()).toBe(1);
  });

  it.each(["AudioVolumeUp", "AudioVolumeMute", "MediaTrackNext", "a", "Enter"])("leaves the key %s alone", (name) => {
    const { media, key, presses } = rig();
    media.setActive(true);
    expect(key(name).defaultPrevented).toBe(false);
    expect(presses()).toBe(0);
  });

  it("takes the media actions play and pause alike, and plays silence to get them", async () => {
    const { media, action, presses, wait, sound, session } = rig();
    media.setActive(true);
    await settle();
    expect(sound).toEqual(["play"]);
    expect(session.playbackState).toBe("playing");
    action("play");
    wait(1000);
    action("pause");
    expect(presses()).toBe(2);
  });

  it("counts a key that is a media action too as one press", () => {
    const { media, key, action, presses, wait } = rig();
    media.setActive(true);
    key("MediaPlayPause");
    wait(20);
    action("pause");
    expect(presses()).toBe(1);
    wait(1000);
    action("pause");
    expect(presses()).toBe(2);
  });

  it("gives all of it back", async () => {
    const { media, key, presses, sound, session, handlers } = rig();
    media.setActive(true);
    await settle();
    media.setActive(false);
    key("MediaPlayPause");
    expect(presses()).toBe(0);
    expect(sound).toEqual(["play", "pause"]);
    expect(session.playbackState).toBe("none");
    expect([...handlers.values()]).toEqual([null, null]);
  });

  it.each([{ hasSession: false }, { refuses: true }])("still takes the keys with %o", async (trouble) => {
    const { media, key, presses } = rig(trouble);
    media.setActive(true);
    await settle();
    key("MediaPlayPause");
    expect(presses()).toBe(1);
  });
});
