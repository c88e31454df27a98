import type { ScreenView } from "../app/screenView.ts";
import { ShapeMark } from "./ShapeMark.tsx";

type NextStepProps = Pick<ScreenView, "nextStep" | "progressText">;

/** The next step, of the list that counts now, that has no answer yet. */
export function NextStepPanel({ nextStep, progressText }: NextStepProps) {
  return (
    <section className="next" aria-label="Next step">
      <h2>
        Next <span className="next-progress">{progressText}</span>
      </h2>
      {nextStep === undefined ? (
        <p className="absent">No step is waiting.</p>
      ) : (
        <>
          <p className="challenge">{nextStep.challenge}</p>
          <p className="next-group">
            {nextStep.groupText}
            {nextStep.killer && (
              <span className="critical">
                <ShapeMark shape="bars3" />
                critical step
              </span>
            )}
          </p>
        </>
      )}
    </section>
  );
}
