/** Where pressing Space already means something else: text, or the button that has the focus. */
function takesSpace(target: EventTarget | null): boolean {
  if (target === null || !("tagName" in target)) return false;
  const tag = String(target.tagName);
  if (tag === "TEXTAREA" || tag === "SELECT" || tag === "BUTTON") return true;
  return tag === "INPUT" && (!("type" in target) || target.type !== "radio");
}

/** F13 to F24 are on no common keyboard and mean nothing to a page: what sends them is a pedal or a button set up for it. */
const PEDAL_KEY = /^F(1[3-9]|2[0-4])$/;

/** Which key an event is of, where it may hold: Space and Page Down, which pedals send too, and the keys of pedals alone. */
function holdKeyOf(event: Event): "plain" | "pedal" | undefined {
  const code = "code" in event ? String(event.code) : "";
  if (code === "Space" || code === "PageDown") return "plain";
  return PEDAL_KEY.test(code) ? "pedal" : undefined;
}

export type HoldSwitch = {
  /** Starts or ends the hold from elsewhere than the keyboard. Repeats do nothing. */
  set(down: boolean): void;
  /** Ends a hold that is on, and stops watching. */
  release(): void;
};

/**
 * Space, Page Down and F13 to F24 as talk keys: down starts, up ends. Losing the window ends it too, or a key released
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
    const key = holdKeyOf(event);
    if (key === undefined || (key === "plain" && !held && takesSpace(event.target))) return;
    event.preventDefault(); // the page would scroll
    set(true);
  };
  const onKeyUp = (event: Event) => {
    if (holdKeyOf(event) !== undefined) set(false);
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
