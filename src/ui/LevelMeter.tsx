import { useStore } from "zustand";
import type { Meter } from "../app/screenView.ts";
import { screenStore } from "./screenStore.ts";

/** Left end of the meter, dBFS: quieter than any working microphone's own noise. */
const FLOOR_DB = -80;

const lengthPct = (levelDb: number) => Math.min(Math.max(1 - levelDb / FLOOR_DB, 0), 1) * 100;

/** How loud it is, how loud the background is, and whether speech is going on. */
export function MeterBar({ meter }: { readonly meter: Meter | undefined }) {
  return (
    <div className={meter?.inSpeech ? "meter meter-speech" : "meter"} aria-hidden="true">
      <div className="meter-track">
        {meter !== undefined && (
          <>
            <div className="meter-level" style={{ width: `${lengthPct(meter.levelDb)}%` }} />
            <div className="meter-noise" style={{ left: `${lengthPct(meter.noiseDb)}%` }} />
          </>
        )}
      </div>
      <span className="meter-word">{meter === undefined ? "no sound" : meter.inSpeech ? "speech" : "background"}</span>
    </div>
  );
}

/** The meter bound to the store, so that its movement redraws nothing else. */
export function LevelMeter() {
  return <MeterBar meter={useStore(screenStore, (state) => state.meter)} />;
}
