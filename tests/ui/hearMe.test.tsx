import { describe, expect, it } from "vitest";
import { viewHearMe } from "../../src/app/view/hearMe.ts";
import type { VoiceProfile } from "../../src/listener/voiceProfile.ts";
import { exampleView } from "./exampleView.ts";
import { pageMarkup, pageText } from "./pageText.tsx";

const NOW_MS = 1_800_000_000_000;
const profile: VoiceProfile = {
  version: 1,
  madeAtMs: NOW_MS - 5 * 60_000,
  speechDb: -31.4,
  noiseDb: -62.2,
  verdict: "doubtful",
};

describe("hear me on the page", () => {
  it("shows the line to be said and the way out only while it runs", () => {
    expect(pageText(exampleView)).not.toContain("Not now");
    const running = { line: "sats ninety three", number: 3, prompt: "Say: sats ninety three." };
    const view = { ...exampleView, hearMe: viewHearMe({ running, profile: undefined, notice: "" }, NOW_MS) };
    expect(pageText(view)).toMatch(/Line 3 of 5 sats ninety three Say: sats ninety three\. Not now/);
  });

  it("shows in the settings what is known: verdict, when, levels", () => {
    expect(pageText(exampleView)).toContain("Not measured on this device.");
    const hearMe = viewHearMe({ running: undefined, profile, notice: "" }, NOW_MS);
    expect(pageText({ ...exampleView, hearMe })).toContain(
      "Heard, but with doubt: expect more questions. Measured 5 min ago: speech −31 dB, room −62 dB.",
    );
  });

  it.each([
    [0, "now"],
    [26 * 3_600_000, "yesterday"],
    [9 * 86_400_000, "9 days ago"],
  ])("%d ms old: %s", (ageMs, text) => {
    const known = { ...profile, madeAtMs: NOW_MS - ageMs };
    expect(viewHearMe({ running: undefined, profile: known, notice: "" }, NOW_MS).profileText).toContain(text);
  });

  it("offers to forget only where there is something to forget", () => {
    const disabled = /<button type="button" disabled="">Forget my voice/;
    expect(pageMarkup(exampleView)).toMatch(disabled);
    const known = viewHearMe({ running: undefined, profile, notice: "" }, NOW_MS);
    expect(pageMarkup({ ...exampleView, hearMe: known })).not.toMatch(disabled);
    const damaged = viewHearMe({ running: undefined, profile: undefined, notice: "It is damaged." }, NOW_MS);
    expect(pageMarkup({ ...exampleView, hearMe: damaged })).not.toMatch(disabled);
  });
});
