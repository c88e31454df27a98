import type { ScreenView } from "../app/screenView.ts";
import { ShapeMark } from "./ShapeMark.tsx";

type ClocksProps = Pick<ScreenView, "phaseText" | "attemptText" | "clocks">;

/** The phase, the attempt and the clocks that run; those that count up are large. What is over or due is marked by a shape, not by colour alone. */
export function ClocksPanel({ phaseText, attemptText, clocks }: ClocksProps) {
  return (
    <section className="clocks" aria-label="Clocks">
      <h2>
        <span className="clocks-phase">{phaseText}</span> <span>{attemptText}</span>
      </h2>
      {clocks.length === 0 ? (
        <p className="absent">No clock runs.</p>
      ) : (
        <ul>
          {clocks.map(({ label, text, over, countsUp }) => (
            <li key={label} className={`clock${countsUp ? " clock-up" : ""}${over ? " clock-over" : ""}`}>
              {over && <ShapeMark shape="bars3" />}
              <span className="clock-label">{label}</span>
              <span className="clock-text">{text}</span>
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}
