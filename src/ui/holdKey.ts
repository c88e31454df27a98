/** Where pressing Space already means something else: text, or the button that has the focus. */
function takesSpace(target: EventTarget | null): boolean {
  if (target === null || !("tagName" in target)) return false;
  const tag = String(target.tagName);
  if (tag === "TEXTAREA" || tag === "SELECT" || tag === "BUTTON") return true;
  return tag === "INPUT" && (!("type" in target) || target.type !== "radio");
}

const isSpace = (event: Event): boolean => "code" in event && event.code === "Space";

export type HoldSwitch = {
  /** Starts or ends the hold from elsewhere than the keyboard. Repeats do nothing. */
  set(down: boolean): void;
  /** Ends a hold that is on, and stops watching. */
  release(): void;
};

/**
 * Space as a talk key: down starts, up ends. Losing the window ends it too, or a key released
 * elsewhere would leave the microphone open.
 *
 * @param source where key and blur events arrive (`window`).
 * @param hold   called once for each change.
 */
export function watchHoldKey(source: EventTarget, hold: (down: boolean) => void): HoldSwitch {
  let held = false;
  const set = (down: boolean) => {
    if (down === held) return;
    held = down;
    hold(down);
  };
  const onKeyDown = (event: Event) => {
    if (!isSpace(event) || (!held && takesSpace(event.target))) return;
    event.preventDefault(); // the page would scroll
    set(true);
  };
  const onKeyUp = (event: Event) => {
    if (isSpace(event)) set(false);
  };
  const onBlur = () => set(false);

  source.addEventListener("keydown", onKeyDown);
  source.addEventListener("keyup", onKeyUp);
  source.addEventListener("blur", onBlur);
  return {
    set,
    release: () => {
      set(false);
      source.removeEventListener("keydown", onKeyDown);
      source.removeEventListener("keyup", onKeyUp);
      source.removeEventListener("blur", onBlur);
    },
  };
}
