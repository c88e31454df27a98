import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { changeSettings, firstSettings, viewSettings, type SettingsInput } from "../../src/app/settings.ts";

const after = (...inputs: readonly SettingsInput[]) => inputs.reduce(changeSettings, firstSettings);
const found = (how: "on-device" | "sends-sound" | "none"): SettingsInput => ({ kind: "browserEngine", found: how });
const browser: SettingsInput = { kind: "engine", engine: "browser" };
const builtIn: SettingsInput = { kind: "engine", engine: "built-in" };
const consent = (agreed: boolean): SettingsInput => ({ kind: "consent", agreed });

describe("which engine listens", () => {
  it.each([
    ["the built-in one at first", [], "built-in", false],
    ["the built-in one where the browser has none", [browser], "built-in", false],
    ["the browser's at once where it stays on the device", [found("on-device"), browser], "browser", false],
    ["the built-in one until the user agrees that sound may leave", [found("sends-sound"), browser], "built-in", true],
    ["the browser's once agreed", [found("sends-sound"), browser, consent(true)], "browser", false],
    ["the built-in one when refused", [found("sends-sound"), browser, consent(false)], "built-in", false],
    [
      "the built-in one when chosen again instead of an answer",
      [found("sends-sound"), browser, builtIn],
      "built-in",
      false,
    ],
    ["the built-in one after an agreement to nothing", [found("sends-sound"), consent(true)], "built-in", false],
  ] as const)("%s", (_name, inputs, engine, consentOpen) => {
    expect(after(...inputs)).toMatchObject({ engine, consentOpen });
    expect(viewSettings(after(...inputs)).consent !== undefined).toBe(consentOpen);
  });

  it("asks again each time", () => {
    expect(after(found("sends-sound"), browser, consent(true), builtIn, browser)).toMatchObject({
      engine: "built-in",
      consentOpen: true,
    });
  });

  it("never lets sound leave without an agreement right before", () => {
    const input = fc.oneof(
      fc.constantFrom(browser, builtIn, consent(true), consent(false)),
      fc.constantFrom("a", undefined).map((id): SettingsInput => ({ kind: "voice", id })),
    );
    fc.assert(
      fc.property(fc.array(input, { maxLength: 20 }), (inputs) => {
        let settings = after(found("sends-sound"));
        for (const next of inputs) {
          const changed = changeSettings(settings, next);
          if (changed.engine === "browser" && settings.engine !== "browser")
            expect([next, settings.consentOpen]).toEqual([consent(true), true]);
          settings = changed;
        }
      }),
    );
  });
});

describe("which voice speaks", () => {
  const voices: SettingsInput = { kind: "voices", voices: [{ id: "v1", name: "Local one" }] };
  it.each([
    ["the built-in one at first", [voices], undefined],
    ["a local one that was chosen", [voices, { kind: "voice", id: "v1" }], "v1"],
    ["the built-in one where the chosen one is not there", [voices, { kind: "voice", id: "gone" }], undefined],
    [
      "the built-in one chosen again",
      [voices, { kind: "voice", id: "v1" }, { kind: "voice", id: undefined }],
      undefined,
    ],
  ] as const)("%s", (_name, inputs, voiceId) => {
    const settings = after(...inputs);
    expect(settings.voiceId).toBe(voiceId);
    expect(
      viewSettings(settings)
        .voices.filter((v) => v.chosen)
        .map((v) => v.id),
    ).toEqual([voiceId]);
  });
});
