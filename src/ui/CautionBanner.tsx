import { useState } from "react";
import { rememberCautionRead, wasCautionRead } from "./cautionRead.ts";

type CautionProps = { readonly caution: string; /** Work has begun: step aside. */ readonly working: boolean };

/** The cautions at first start. Not a dialogue: it must never stand between a spoken value and the page. */
export function CautionBanner({ caution, working }: CautionProps) {
  const [read, setRead] = useState(wasCautionRead);
  if (read || working) return null;
  const putAway = () => {
    rememberCautionRead();
    setRead(true);
  };
  return (
    <section className="caution" aria-label="Caution">
      <p>{caution}</p>
      <button type="button" onClick={putAway}>
        I have read this
      </button>
    </section>
  );
}
