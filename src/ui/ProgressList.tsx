import type { ScreenView, StepRow } from "../app/screenView.ts";
import { ShapeMark, type Shape } from "./ShapeMark.tsx";

const SHAPES: Readonly<Record<StepRow["state"], Shape>> = {
  open: "ring",
  called: "disc",
  later: "clock",
  closed: "tick",
  passed: "dash",
};

function StepLine({ step }: { readonly step: StepRow }) {
  return (
    <li className={`step step-${step.state}`} aria-current={step.state === "called" ? "step" : undefined}>
      <ShapeMark shape={SHAPES[step.state]} />
      <span className="step-name">{step.name}</span>
      {step.killer && (
        <span className="critical">
          <ShapeMark shape="bars3" />
          critical
        </span>
      )}
      <span className="step-text">{step.text}</span>
    </li>
  );
}

/** The list that counts now: how many steps of each group are closed, and what each was answered with. */
export function ProgressList({ listTitle, groups }: Pick<ScreenView, "listTitle" | "groups">) {
  return (
    <section className="progress" aria-label={listTitle}>
      <h2>{listTitle}</h2>
      {groups.map((group) => (
        <div key={group.id} className="group">
          <h3 className="group-head">
            <span className="group-title">{group.title}</span>
            <progress value={group.done} max={group.total} aria-label={group.title} />
            <span className="group-count">
              {group.done} of {group.total}
            </span>
          </h3>
          <ul>
            {group.steps.map((step) => (
              <StepLine key={step.id} step={step} />
            ))}
          </ul>
        </div>
      ))}
    </section>
  );
}
