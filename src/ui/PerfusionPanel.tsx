import type { ScreenView } from "../app/screenView.ts";
import { Amount } from "./Amount.tsx";
import { PerfusionFigure } from "./PerfusionFigure.tsx";
import { ShapeMark } from "./ShapeMark.tsx";

type PerfusionProps = Pick<ScreenView, "headline" | "bar" | "targetLines">;

/** Pressure against target: in big words first, then as a bar. */
export function PerfusionPanel({ headline, bar, targetLines }: PerfusionProps) {
  return (
    <section className="perfusion" aria-label="Perfusion">
      <p className={bar === undefined ? "map-text map-words" : "map-text"}>
        <Amount text={headline.mapText} unitClass="map-unit" />
      </p>
      <p className={headline.met ? "deficit deficit-met" : "deficit deficit-open"}>
        {bar !== undefined && <ShapeMark shape={headline.met ? "tick" : "bars3"} />}
        <span>{headline.deficitText}</span>
      </p>
      <p className="cpp-text">{headline.cppText}</p>
      {bar !== undefined && <PerfusionFigure bar={bar} />}
      <ul className="target-lines">
        {targetLines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </section>
  );
}
