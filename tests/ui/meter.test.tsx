import { renderToStaticMarkup } from "react-dom/server";
import { expect, it, vi } from "vitest";
import { MeterBar } from "../../src/ui/LevelMeter.tsx";
import { screenStore, showMeter, showView } from "../../src/ui/screenStore.ts";
import { exampleView } from "./exampleView.ts";

it.each([
  { name: "no microphone", meter: undefined, word: "no sound" },
  { name: "speech", meter: { levelDb: -20, noiseDb: -50, inSpeech: true }, word: "speech" },
  { name: "background", meter: { levelDb: -48, noiseDb: -50, inSpeech: false }, word: "background" },
])("the meter says in a word what it shows: $name", ({ meter, word }) => {
  expect(renderToStaticMarkup(<MeterBar meter={meter} />)).toContain(`>${word}<`);
});

it.each([
  { levelDb: -80, width: "0%" },
  { levelDb: -40, width: "50%" },
  { levelDb: 0, width: "100%" },
  { levelDb: Number.NEGATIVE_INFINITY, width: "0%" },
])("$levelDb dBFS fills $width", ({ levelDb, width }) => {
  expect(renderToStaticMarkup(<MeterBar meter={{ levelDb, noiseDb: -60, inSpeech: false }} />)).toContain(
    `width:${width}`,
  );
});

it("a moving meter leaves the view as it was", () => {
  showView(exampleView);
  const seen = vi.fn();
  const stop = screenStore.subscribe((now, before) => seen(now.view === before.view));
  showMeter({ levelDb: -30, noiseDb: -50, inSpeech: false });
  stop();
  expect(seen.mock.calls).toEqual([[true]]);
});
