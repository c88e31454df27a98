import type { KeyboardEvent } from "react";
import { useEffect, useRef } from "react";
import type { ScreenActions } from "../app/screenView.ts";
import type { HoldSwitch } from "./holdKey.ts";
import { watchHoldKey } from "./holdKey.ts";

const isPressKey = (event: KeyboardEvent): boolean => event.code === "Space" || event.code === "Enter";

type HoldProps = { readonly holding: boolean; readonly actions: ScreenActions };

/**
 * Speech is taken only while this is held: by finger, mouse, pedal, or the Space key anywhere on the page; or between two
 * presses of a headset's button or a media key, which come from elsewhere.
 */
export function HoldButton({ holding, actions }: HoldProps) {
  const holdSwitch = useRef<HoldSwitch>(undefined);
  useEffect(() => {
    const watched = watchHoldKey(window, (held) => actions.hold(held));
    holdSwitch.current = watched;
    return () => watched.release();
  }, [actions]);
  const set = (held: boolean) => holdSwitch.current?.set(held);

  return (
    <button
      type="button"
      className="hold"
      aria-pressed={holding}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId); // a finger that slides off must still end it
        set(true);
      }}
      onPointerUp={() => set(false)}
      onPointerCancel={() => set(false)}
      onContextMenu={(event) => event.preventDefault()} // a long press opens a menu on touch screens
      onKeyDown={(event) => {
        if (!isPressKey(event)) return;
        event.preventDefault();
        set(true);
      }}
      onKeyUp={(event) => {
        if (isPressKey(event)) set(false);
      }}
      onBlur={() => set(false)}
    >
      {holding ? "Talk now, release or press again to end" : "Hold to talk (Space)"}
    </button>
  );
}
