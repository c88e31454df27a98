import fc from "fast-check";
import type { ReactElement } from "react";
import { describe, expect, it } from "vitest";
import type { HearingStatus, Outcome, ScreenView } from "../../src/app/screenView.ts";
import { AlertList } from "../../src/ui/AlertList.tsx";
import { emptyView, exampleView } from "./exampleView.ts";
import { pageMarkup, pageText } from "./pageText.tsx";

/** Every text of a view that a reader must be able to find on the page. */
function textsOf(view: ScreenView): string[] {
  const texts = [
    view.caution,
    ...view.handover.flatMap(({ title, text }) => [title, text]),
    view.protocolText,
    view.saveText,
    view.caseText,
    view.roomText,
    view.hearing.text,
    view.hearing.notice,
    view.hearing.talkText,
    view.lastHeard?.words,
    view.lastHeard?.outcome,
    view.lastSpoken,
    view.question,
    view.headline.mapText,
    view.headline.deficitText,
    view.headline.cppText,
    view.why?.text,
    ...(view.why?.lines ?? []).flatMap(({ label, text, sourceText }) => [label, text, sourceText]),
    ...view.targetLines,
    view.bar?.description,
    ...view.tiles.flatMap((tile) => [tile.label, tile.text, tile.ageText, tile.origin === "none" ? "" : tile.origin]),
    ...view.drugs.drugs.flatMap((drug) => [drug.name, drug.classText, ...drug.lines]),
    ...view.drugs.fluids,
    view.phaseText,
    view.attemptText,
    ...view.clocks.flatMap(({ label, text }) => [label, text]),
    view.nextStep?.groupText,
    view.nextStep?.challenge,
    view.progressText,
    view.listTitle,
    ...view.groups.flatMap((group) => [group.title, `${group.done} of ${group.total}`]),
    ...view.groups.flatMap(({ steps }) => steps.flatMap(({ name, text }) => [name, text])),
    ...view.alerts.flatMap((alert) => [alert.text, `${alert.priority} priority`]),
    ...view.phrases,
  ];
  return texts.filter((text): text is string => text !== undefined && text !== "");
}

const numbersIn = (text: string): string[] => text.match(/\d+(?:\.\d+)?/g) ?? [];

describe("the page", () => {
  it.each([
    { name: "with everything", view: exampleView },
    { name: "before the first reading", view: emptyView },
  ])("shows every text of the view $name", ({ view }) => {
    const text = pageText(view).toLowerCase();
    const missing = textsOf(view).filter((wanted) => !text.includes(wanted.toLowerCase()));
    expect(missing).toEqual([]);
  });

  it("says 'not yet recorded' once for each tile without a value, never a zero", () => {
    const shown = pageText({ ...emptyView, headline: { ...emptyView.headline, mapText: "MAP" } });
    expect(shown.match(/not yet recorded/g)).toHaveLength(emptyView.tiles.length);
  });

  it("prints no number that the view does not hold", () => {
    const tile = fc.record({
      id: fc.uuid(),
      label: fc.constantFrom("MAP", "ICP", "Heart rate"),
      text: fc.integer({ min: 0, max: 300 }).map((n) => `${n} mmHg`),
      origin: fc.constantFrom("measured" as const, "computed" as const, "assumed" as const, "none" as const),
      ageText: fc.integer({ min: 0, max: 90 }).map((n) => `${n} min ago`),
      stale: fc.boolean(),
    });
    const mmHg = fc.double({ min: 0, max: 200, noNaN: true });
    const bar = fc.record({
      scaleMaxMmHg: fc.double({ min: 1, max: 300, noNaN: true }),
      mapMmHg: mmHg,
      icp: fc.record({ kind: fc.constantFrom("measured" as const, "assumed" as const), lowMmHg: mmHg, highMmHg: mmHg }),
      targetMmHg: mmHg,
      description: fc.constant("the bar in words"),
    });
    fc.assert(
      fc.property(fc.uniqueArray(tile, { selector: (t) => t.id }), bar, (tiles, drawn) => {
        const view: ScreenView = { ...exampleView, tiles, bar: drawn };
        const held = new Set(textsOf(view).flatMap(numbersIn));
        // "SpO2" and "EtCO2" are names; their digit is no value.
        const shown = numbersIn(pageText(view).replace(/SpO2|EtCO2/g, ""));
        expect(shown.filter((number) => !held.has(number))).toEqual([]);
      }),
    );
  });

  it.each<{ status: HearingStatus; button: string }>([
    { status: "off", button: "Start listening" },
    { status: "fault", button: "Start listening" },
    { status: "loading", button: "Stop listening" },
    { status: "listening", button: "Stop listening" },
    { status: "speaking", button: "Stop listening" },
  ])("offers '$button' when hearing is $status", ({ status, button }) => {
    expect(pageText({ ...exampleView, hearing: { ...exampleView.hearing, status, text: "state" } })).toContain(button);
  });

  it("shows the talk button in held mode only", () => {
    const inMode = (mode: "open" | "called" | "held") =>
      pageText({ ...exampleView, hearing: { ...exampleView.hearing, mode } });
    expect(inMode("held")).toContain("Hold to talk");
    expect(inMode("open")).not.toContain("Hold to talk");
    expect(inMode("called")).not.toContain("Hold to talk");
  });

  it("shows that held listening takes an utterance, whatever key began it", () => {
    const hearing = { ...exampleView.hearing, mode: "held" as const, holding: true };
    expect(pageText({ ...exampleView, hearing })).toContain("Talk now");
  });

  it.each<Outcome>(["recorded", "asked", "answered", "refused", "ignored"])(
    "gives the outcome %s as a word and a shape",
    (outcome) => {
      const markup = pageMarkup({ ...exampleView, lastHeard: { words: "some words", outcome } });
      expect(markup).toMatch(new RegExp(`outcome-${outcome}"><svg[^]*?</svg>${outcome}<`));
    },
  );

  it("gives every alert priority a shape of its own beside its word", () => {
    const alerts = (["high", "medium", "low"] as const).map((priority) => ({
      id: priority,
      priority,
      text: "alert",
      news: "",
      acknowledged: false,
    }));
    const markup = pageMarkup({ ...exampleView, alerts });
    const shapes = [...markup.matchAll(/alert-(?:high|medium|low)"><svg[^>]*><path d="([^"]*)"/g)].map((m) => m[1]);
    expect(new Set(shapes).size).toBe(3);
  });

  it("says of an alert that somebody has it, and keeps the shape of its priority", () => {
    const markupOf = (acknowledged: boolean) =>
      pageMarkup({ ...exampleView, alerts: [{ ...exampleView.alerts[0]!, acknowledged }] });
    const shapeIn = (markup: string) => /class="alert alert-high[^"]*"><svg[^>]*><path d="([^"]*)"/.exec(markup)?.[1];
    expect(shapeIn(markupOf(true))).toBeDefined();
    expect(shapeIn(markupOf(true))).toBe(shapeIn(markupOf(false)));
    expect(markupOf(true)).toMatch(/alert-acknowledged[^]*High priority<[^]*>acknowledged</);
    expect(markupOf(false)).not.toContain("acknowledged");
  });

  it("brings an alert in anew, to be announced, when there is news of it, and not when it grows old", () => {
    const keyOf = (change: Partial<ScreenView["alerts"][number]>) => {
      const list = AlertList({ alerts: [{ ...exampleView.alerts[0]!, ...change }] });
      const [alert] = (list.props as { readonly children: readonly ReactElement[] }).children;
      return alert?.key;
    };
    expect(keyOf({})).toBe(keyOf({ text: "MAP 77, 13 below target, 2 min ago", acknowledged: true }));
    expect(keyOf({})).not.toBe(keyOf({ news: "9" }));
  });

  it("brings a failed save up among the alerts", () => {
    const failed = pageMarkup({ ...exampleView, saveText: "Not saved: storage is full", saveFailed: true });
    expect(failed.indexOf("Not saved: storage is full")).toBeLessThan(failed.indexOf(exampleView.headline.deficitText));
  });

  it("marks an old value with a word", () => {
    expect(pageText(exampleView)).toContain("old, measured, 8 min ago");
    expect(pageText(exampleView)).not.toContain("old, measured, 1 min ago");
  });

  it("keeps the live regions in place when they are empty", () => {
    const markup = pageMarkup(emptyView);
    expect(markup).toMatch(/class="alerts"[^>]*aria-live="assertive" aria-relevant="additions"/);
    expect(markup).toMatch(/class="question"[^>]*aria-live="assertive"/);
    expect(markup).toMatch(/class="said" aria-live="polite"/);
  });

  it("draws a measured ICP solid and an assumed one hatched, and says which", () => {
    const measured = pageMarkup({
      ...exampleView,
      bar: { ...exampleView.bar!, icp: { kind: "measured", lowMmHg: 22, highMmHg: 22 } },
    });
    expect(measured).toContain('class="part part-icp"');
    expect(measured).not.toContain("part-icp-assumed");
    expect(measured).toContain("ICP, measured");
    const assumed = pageMarkup(exampleView);
    expect(assumed).toContain("part-icp-assumed");
    expect(assumed).toContain("part-icp-range");
    expect(assumed).toContain("ICP, assumed range");
  });
});
