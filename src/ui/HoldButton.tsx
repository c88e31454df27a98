import type { KeyboardEvent } from "react";
import { useEffect, useRef, useState } from "react";
import type { ScreenActions } from "../app/screenView.ts";
import type { HoldSwitch } from "./holdKey.ts";
import { watchHoldKey } from "./holdKey.ts";

const isPressKey = (event: KeyboardEvent): boolean => event.code === "Space" || event.code === "Enter";

/** Speech is taken only while this is held: by finger, mouse, or the Space key anywhere on the page. */
export function HoldButton({ actions }: { readonly actions: ScreenActions }) {
  const [down, setDown] = useState(false);
  const holdSwitch = useRef<HoldSwitch>(undefined);
  useEffect(() => {
    const watched = watchHoldKey(window, (held) => {
      setDown(held);
      actions.hold(held);
    });
    holdSwitch.current = watched;
    return () => watched.release();
  }, [actions]);
  const set = (held: boolean) => holdSwitch.current?.set(held);

  return (
    <button
      type="button"
      className="hold"
      aria-pressed={down}
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
      {down ? "Talk now, release to end" : "Hold to talk (Space)"}
    </button>
  );
}
