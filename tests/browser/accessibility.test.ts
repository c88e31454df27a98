import axe from "axe-core";
import { afterAll, beforeAll, describe, expect, inject, it, vi } from "vitest";
import { openPage, type OpenedPage } from "./openPage.ts";
import { serveBuild, type Served } from "./serveBuild.ts";

type Axe = typeof axe;

// Outside judge: axe-core's rules for WCAG 2.2 level A and AA, and 1.4.6 (contrast, level AAA), which this page promises.
const RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "cat.color"];

/** Typed into the page one after the other; each leaves the page in another state. */
const STATES: readonly (readonly [typed: string, shows: RegExp])[] = [
  ["one ten over sixty", /110\/60/],
  ["icp fifteen", /one five\?/i],
  ["one five", /CPP 62/],
  ["sats eighty eight", /SpO2 88, 6 under/],
  ["noradrenaline four milligrams in two fifty", /two five zero, millilitres\?/i],
  ["affirm", /Concentration 4\smg in 250\smL, affirmed/],
  ["map 65", /MAP 65, 25 under target 90/],
  ["heard pressure", /acknowledged/],
  ["brief talk", /Brief talk\./],
  ["blade in", /Attempt 1, running/],
  ["herniation suspected", /Start rescue measures\?/],
];

describe("the page for everyone", () => {
  let served: Served;
  let opened: OpenedPage;

  beforeAll(async () => {
    served = await serveBuild();
    opened = await openPage({ browserPath: inject("browserPath"), origin: served.origin });
    await vi.waitFor(() => expect(opened.page.locator("main").count()).resolves.toBe(1), { timeout: 60_000 });
    await opened.page.evaluate(axe.source);
  });

  afterAll(async () => {
    await opened.close();
    await served.close();
  });

  const violations = () =>
    opened.page.evaluate(async (tags) => {
      const { axe } = window as unknown as { axe: Axe };
      const found = await axe.run({
        runOnly: { type: "tag", values: [...tags] },
        rules: { "color-contrast-enhanced": { enabled: true } },
      });
      return found.violations.map(({ id, nodes }) => `${id}: ${nodes.map((n) => n.target.join(" ")).join(", ")}`);
    }, RULES);

  it("has no violation with nothing recorded", async () => {
    expect(await violations()).toEqual([]);
  });

  it.each(STATES)("has no violation after %s", async (typed, shows) => {
    const { page } = opened;
    await page.getByRole("textbox", { name: "Type instead of speaking" }).fill(typed);
    await page.keyboard.press("Enter");
    await vi.waitFor(() => expect(page.innerText("body")).resolves.toMatch(shows), { timeout: 10_000 });
    expect(await violations()).toEqual([]);
    // Typing must not scroll the pressure out of sight.
    expect(await page.evaluate(() => window.scrollY)).toBe(0);
  });

  it("brings no alert in anew that only grows older, so that none is read out again", async () => {
    const { page } = opened;
    const firstAge = await page.locator(".alert", { hasText: "MAP 65" }).innerText();
    await page.evaluate(() => {
      const region = document.querySelector(".alerts");
      const seen = { added: 0 };
      Object.assign(window, { seen });
      new MutationObserver((changes) => {
        for (const { addedNodes } of changes)
          seen.added += [...addedNodes].filter((node) => node.textContent?.includes("MAP 65")).length;
      }).observe(region!, { childList: true, subtree: true });
    });
    const now = () => page.locator(".alert", { hasText: "MAP 65" }).innerText();
    await vi.waitFor(async () => expect(await now()).not.toBe(firstAge), { timeout: 40_000, interval: 500 });
    expect(await page.evaluate(() => (window as unknown as { seen: { added: number } }).seen.added)).toBe(0);
  });

  it("is worked by keys alone: every control is reached with Tab and shows where the focus is", async () => {
    const { page } = opened;
    await page.locator("body").click({ position: { x: 1, y: 1 } });
    const reached = new Set<string>();
    for (let i = 0; i < 40; i++) {
      await page.keyboard.press("Tab");
      const at = await page.evaluate(() => {
        const element = document.activeElement;
        if (element === null || element === document.body) return "";
        const { outlineStyle, outlineWidth } = getComputedStyle(element);
        const own = outlineStyle !== "none" && parseFloat(outlineWidth) >= 2;
        const parent = element.parentElement && getComputedStyle(element.parentElement);
        const around = parent !== null && parent.outlineStyle !== "none" && parseFloat(parent.outlineWidth) >= 2;
        return `${element.tagName.toLowerCase()} ${own || around ? "seen" : "unseen"}`;
      });
      if (at !== "") reached.add(at);
    }
    expect([...reached].filter((r) => r.endsWith("unseen"))).toEqual([]);
    for (const tag of ["button", "input", "summary"]) expect([...reached].join()).toContain(`${tag} seen`);
  });
});
