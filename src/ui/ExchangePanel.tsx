import type { ScreenView, ShownOutcome } from "../app/screenView.ts";
import type { Shape } from "./ShapeMark.tsx";
import { ShapeMark } from "./ShapeMark.tsx";

const OUTCOME_SHAPES: Record<ShownOutcome, Shape> = {
  recorded: "tick",
  asked: "query",
  answered: "sound",
  refused: "cross",
  ignored: "dash",
  "not saved": "cross",
};

type ExchangeProps = Pick<ScreenView, "lastHeard" | "lastSpoken">;

/** The last words heard, what came of them, and what was said in return. */
export function ExchangePanel({ lastHeard, lastSpoken }: ExchangeProps) {
  return (
    <section className="exchange" aria-label="Last exchange">
      <dl>
        <dt>Heard</dt>
        <dd className="heard">
          {lastHeard === undefined ? (
            <span className="absent">nothing yet</span>
          ) : (
            <>
              <span className="heard-words">{lastHeard.words}</span>
              <span className={`outcome outcome-${lastHeard.outcome.replace(" ", "-")}`}>
                <ShapeMark shape={OUTCOME_SHAPES[lastHeard.outcome]} />
                {lastHeard.outcome}
              </span>
            </>
          )}
        </dd>
        <dt>Said</dt>
        <dd className="said" aria-live="polite" aria-atomic="true">
          {lastSpoken ?? <span className="absent">nothing yet</span>}
        </dd>
      </dl>
    </section>
  );
}
