import { useCallback, useEffect, useRef, useState } from "react";

/**
 * Whether something is read in place of the case's own parts. When it ends, the page stands where it stood, and the focus
 * is on the button again that began it.
 */
export function useReading() {
  const [reading, setReading] = useState(false);
  const opener = useRef<HTMLButtonElement>(null);
  const leftAtPx = useRef<number>(undefined);
  const open = useCallback(() => {
    leftAtPx.current = window.scrollY;
    setReading(true);
  }, []);
  const close = useCallback(() => setReading(false), []);
  useEffect(() => {
    if (reading || leftAtPx.current === undefined) return;
    window.scrollTo(0, leftAtPx.current);
    opener.current?.focus({ preventScroll: true });
  }, [reading]);
  return { reading, opener, open, close };
}
