import type { ScreenView } from "../app/screenView.ts";
import { keepUnits } from "./keepUnits.ts";

/** Drugs and fluids of the case. Each drug has a band in the colour of its class, with the class in words on it. */
export function DrugPanel({ drugs: { drugs, fluids } }: Pick<ScreenView, "drugs">) {
  if (drugs.length === 0 && fluids.length === 0) return null;
  return (
    <section className="drugs" aria-label="Drugs">
      <h2>Drugs</h2>
      <ul>
        {drugs.map((drug) => (
          <li key={drug.id} className="drug">
            <p className={`drug-band drug-${drug.drugClass}`}>
              <span className={drug.reversed ? "drug-name drug-reversed" : "drug-name"}>{drug.name}</span>{" "}
              <span>{drug.classText}</span>
            </p>
            {drug.lines.map((line) => (
              <p key={line} className="drug-line">
                {keepUnits(line)}
              </p>
            ))}
          </li>
        ))}
        {fluids.map((fluid) => (
          <li key={fluid} className="drug">
            <p className="drug-line">{keepUnits(fluid)}</p>
          </li>
        ))}
      </ul>
    </section>
  );
}
