import type { PerfusionBar } from "../app/screenView.ts";
import type { Stretch } from "./barGeometry.ts";
import { barGeometry } from "./barGeometry.ts";

function Part({ name, stretch }: { readonly name: string; readonly stretch: Stretch }) {
  if (stretch.lengthPct === 0) return null;
  return (
    <div className={`part part-${name}`} style={{ left: `${stretch.startPct}%`, width: `${stretch.lengthPct}%` }} />
  );
}

/** MAP drawn as its two parts, ICP and what remains for perfusion, against the target line. */
export function PerfusionFigure({ bar }: { readonly bar: PerfusionBar }) {
  const parts = barGeometry(bar);
  const measured = bar.icp.kind === "measured";
  return (
    <figure className="figure">
      <div className="track" role="img" aria-label={bar.description}>
        <Part name={measured ? "icp" : "icp-assumed"} stretch={parts.icp} />
        <Part name="icp-range" stretch={parts.icpRange} />
        <Part name="remainder" stretch={parts.remainder} />
        <Part name="missing" stretch={parts.missing} />
        <div className="target-line" style={{ left: `${parts.targetPct}%` }} />
      </div>
      <figcaption className="key" aria-hidden="true">
        <span className={measured ? "key-icp" : "key-icp-assumed"}>
          {measured ? "ICP, measured" : "ICP, assumed range"}
        </span>
        <span className="key-remainder">left for perfusion</span>
        {parts.missing.lengthPct > 0 && <span className="key-missing">missing</span>}
        <span className="key-target">target</span>
      </figcaption>
    </figure>
  );
}
