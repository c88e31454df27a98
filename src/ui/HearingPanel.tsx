import type { HearingStatus, ScreenActions, ScreenView } from "../app/screenView.ts";
import { HoldButton } from "./HoldButton.tsx";
import { LevelMeter } from "./LevelMeter.tsx";
import type { Shape } from "./ShapeMark.tsx";
import { ShapeMark } from "./ShapeMark.tsx";

const STATUS_SHAPES: Record<HearingStatus, Shape> = {
  off: "ring",
  loading: "dots",
  listening: "disc",
  speaking: "sound",
  fault: "cross",
};

const MODES = [
  { mode: "open", label: "Open" },
  { mode: "called", label: "Called" },
  { mode: "held", label: "Held" },
] as const;

type HearingProps = { readonly hearing: ScreenView["hearing"]; readonly actions: ScreenActions };

/** Is it listening, how loud is it, and how does it know that someone talks to it. */
export function HearingPanel({ hearing, actions }: HearingProps) {
  const stopped = hearing.status === "off" || hearing.status === "fault";
  return (
    <section className={`hearing hearing-${hearing.status}`} aria-label="Hearing">
      <p className="hearing-text" role="status">
        <ShapeMark shape={STATUS_SHAPES[hearing.status]} />
        <span>{hearing.text}</span>
      </p>
      <button
        type="button"
        className="listen"
        onClick={() => (stopped ? actions.startListening() : actions.stopListening())}
      >
        {stopped ? "Start listening" : "Stop listening"}
      </button>
      <LevelMeter />
      <fieldset className="modes">
        <legend className="unseen">Listening mode</legend>
        {MODES.map(({ mode, label }) => (
          <label key={mode} className="mode">
            <input type="radio" name="mode" checked={hearing.mode === mode} onChange={() => actions.setMode(mode)} />
            <span>{label}</span>
          </label>
        ))}
      </fieldset>
      {hearing.mode === "held" && <HoldButton holding={hearing.holding} actions={actions} />}
      {/* It counts down, and the change was said aloud: no live region. */}
      {hearing.talkText !== "" && <p className="hearing-talk">{hearing.talkText}</p>}
      <div role="status" className="hearing-notice">
        {hearing.notice !== "" && (
          <p>
            <ShapeMark shape="sound" />
            <span>{hearing.notice}</span>
          </p>
        )}
      </div>
    </section>
  );
}
