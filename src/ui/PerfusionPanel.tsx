import type { ScreenView } from "../app/screenView.ts";
import { Amount } from "./Amount.tsx";
import { PerfusionFigure } from "./PerfusionFigure.tsx";
import { ShapeMark } from "./ShapeMark.tsx";

type PerfusionProps = Pick<ScreenView, "headline" | "bar" | "targetLines">;

type AgainstProps = {
  readonly className: string;
  readonly text: string;
  /** All that is judged is at target. */ readonly met: boolean;
  readonly under: boolean;
};

/** A pressure against its target. The tick stands only where nothing is under: not for a MAP beside a low CPP. */
function Against({ className, text, met, under }: AgainstProps) {
  if (!met && !under) return <p className={className}>{text}</p>;
  return (
    <p className={`${className} ${met ? "target-met" : "target-under"}`}>
      <ShapeMark shape={met ? "tick" : "bars3"} />
      <span>{text}</span>
    </p>
  );
}

/** Pressure against target: in big words first, then as a bar. */
export function PerfusionPanel({ headline, bar, targetLines }: PerfusionProps) {
  return (
    <section className="perfusion" aria-label="Perfusion">
      <p className={bar === undefined ? "map-text map-words" : "map-text"}>
        <Amount text={headline.mapText} unitClass="map-unit" />
      </p>
      <Against className="deficit" text={headline.deficitText} met={headline.met} under={headline.mapUnder} />
      <Against className="cpp-text" text={headline.cppText} met={false} under={headline.cppUnder} />
      {bar !== undefined && <PerfusionFigure bar={bar} />}
      <ul className="target-lines">
        {targetLines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </section>
  );
}
