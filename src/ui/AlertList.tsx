import type { ScreenView } from "../app/screenView.ts";
import type { Shape } from "./ShapeMark.tsx";
import { ShapeMark } from "./ShapeMark.tsx";

type Alerts = ScreenView["alerts"];

/** More bars, more urgent: the order can be seen without colour and without reading. */
const LOOK: Record<Alerts[number]["priority"], { readonly word: string; readonly shape: Shape }> = {
  high: { word: "High priority", shape: "bars3" },
  medium: { word: "Medium priority", shape: "bars2" },
  low: { word: "Low priority", shape: "bars1" },
};

/**
 * Standing alerts, in the order given. The region stays in the page when empty, or a new alert would not be announced. What
 * is new of one is a new element, and only elements that come in are announced: an age that grows is not read out again.
 */
export function AlertList({ alerts }: { readonly alerts: Alerts }) {
  return (
    <section className="alerts" aria-label="Alerts" aria-live="assertive" aria-relevant="additions">
      {alerts.map((alert) => {
        const { word, shape } = LOOK[alert.priority];
        return (
          <p
            key={`${alert.id} ${alert.news}`}
            className={`alert alert-${alert.priority}${alert.acknowledged ? " alert-acknowledged" : ""}`}
          >
            <ShapeMark shape={shape} />
            <span className="alert-text">{alert.text}</span>
            <span className="alert-state">
              <span>{word}</span>
              {alert.acknowledged && <span>acknowledged</span>}
            </span>
          </p>
        );
      })}
    </section>
  );
}
