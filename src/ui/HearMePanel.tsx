import type { ScreenActions, ScreenView } from "../app/screenView.ts";
import { ShapeMark } from "./ShapeMark.tsx";

type HearMeProps = {
  readonly running: NonNullable<ScreenView["hearMe"]["running"]>;
  readonly actions: ScreenActions;
};

/** The line to be repeated now, large enough to be read from a step away, and the way out. The voice says the same. */
export function HearMePanel({ running, actions }: HearMeProps) {
  return (
    <section className="hear-me" aria-label="Hear me">
      <p className="hear-me-count">
        <ShapeMark shape="sound" />
        <span>{running.countText}</span>
      </p>
      <p className="hear-me-line">{running.line}</p>
      <p className="hear-me-prompt">{running.prompt}</p>
      <button type="button" onClick={() => actions.skipHearMe()}>
        Not now
      </button>
    </section>
  );
}
