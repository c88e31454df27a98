import { createHash } from "node:crypto";
import axe from "axe-core";
import canonicalize from "canonicalize";
import { afterAll, beforeAll, describe, expect, inject, it, vi } from "vitest";
import { defaultProtocol } from "../../src/protocol/defaultProtocol.ts";
import { openPage, type OpenedPage } from "./openPage.ts";
import { readFacts } from "./readFacts.ts";
import { serveBuild, type Served } from "./serveBuild.ts";

type Axe = typeof axe;
const RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "cat.color"];

const STAND_BY_MIN = defaultProtocol.timers.standByS.value / 60;
const gone = defaultProtocol.drugs.at(-1)!;

/** Invented for this test: a name and a timer of its own, and one drug less. No service uses it. */
function inventedProtocol() {
  const file = structuredClone(defaultProtocol) as unknown as {
    name: string;
    timers: { standByS: { value: number } };
    drugs: { id: string }[];
  };
  file.name = "Invented protocol of a test";
  file.timers.standByS.value = 77;
  file.drugs = file.drugs.filter(({ id }) => id !== gone.id);
  return file;
}

const invented = inventedProtocol();
const asFile = (name: string, text: string) => ({ name, mimeType: "application/json", buffer: Buffer.from(text) });

describe("the protocol page", () => {
  let served: Served;
  let opened: OpenedPage;

  beforeAll(async () => {
    served = await serveBuild();
    opened = await openPage({ browserPath: inject("browserPath"), origin: served.origin });
    await opened.page.getByRole("button", { name: "Protocol", exact: true }).waitFor({ timeout: 60_000 });
    await opened.page.evaluate(axe.source);
  });

  afterAll(async () => {
    await opened.close();
    await served.close();
  });

  const main = () => opened.page.innerText("main");
  const choose = (file: { name: string; mimeType: string; buffer: Buffer }) =>
    opened.page.locator("input[type=file]").setInputFiles(file);
  const rowNamed = (label: string) =>
    opened.page.getByRole("row").filter({ has: opened.page.getByRole("rowheader", { name: label }) });

  it("opens from the main page with the focus on its heading", async () => {
    const { page } = opened;
    await page.getByRole("button", { name: "Protocol", exact: true }).press("Enter");
    const heading = page.getByRole("heading", { level: 2, name: `Protocol: ${defaultProtocol.name}` });
    await expect.poll(() => heading.evaluate((element) => element === document.activeElement)).toBe(true);
    expect(await page.evaluate(() => window.scrollY)).toBe(0);
    expect(await main()).toContain("Example protocol, not approved for patients.");
  });

  it("shows the bundled protocol in tables, and that nothing differs", async () => {
    const { page } = opened;
    expect(await main()).toContain("Nothing differs from the bundled example.");
    const drug = defaultProtocol.drugs[0]!;
    const table = page.getByRole("table", { name: drug.names.international, exact: false }).first();
    expect(await table.getByRole("columnheader").allInnerTexts()).toEqual(["Entry", "Value", "Source"]);
    const { reference } = drug.doses[0]!.source;
    expect(await table.getByRole("row").nth(1).innerText()).toContain(reference);
    const minutes = new RegExp(`${STAND_BY_MIN}\\smin`, "u");
    expect(await rowNamed("Stand by holds prompts for").innerText()).toMatch(minutes);
  });

  it("keeps the case going, with its alerts on top however far the page is scrolled", async () => {
    const { page } = opened;
    await page.getByRole("textbox", { name: "Type instead of speaking" }).fill("sats eighty eight");
    await page.keyboard.press("Enter");
    const alert = page.getByRole("region", { name: "Alerts" }).getByText(/SpO2 88/u);
    await alert.waitFor();
    await page.getByRole("link", { name: "Asking back" }).click();
    await expect.poll(() => page.evaluate(() => window.scrollY)).toBeGreaterThan(5000);
    const { top, bottom, height } = await alert.evaluate((element) => {
      const box = element.getBoundingClientRect();
      return { top: box.top, bottom: box.bottom, height: window.innerHeight };
    });
    expect(top).toBeGreaterThanOrEqual(0);
    expect(bottom).toBeLessThan(height / 2);
  });

  it("loads another file, marks what differs and records it with its hash", async () => {
    const { page } = opened;
    await choose(asFile("invented.json", JSON.stringify(invented, null, 1)));
    await vi.waitFor(async () => expect(await main()).toContain("Loaded invented.json"), { timeout: 60_000 });
    const hash = createHash("sha256").update(canonicalize(invented)!).digest("hex");
    await expect.poll(main).toContain(hash);
    expect(await page.getByRole("heading", { level: 2 }).first().innerText()).toContain("Invented protocol of a test");
    const text = await rowNamed("Stand by holds prompts for").innerText();
    expect(text).toMatch(new RegExp(`changed[^]*77\\ss[^]*Bundled: ${STAND_BY_MIN}\\smin`, "u"));
    const removed = page.getByRole("table", { name: gone.names.international }).getByRole("row").nth(1);
    expect(await removed.innerText()).toContain("removed");
    await expect
      .poll(() => readFacts(page))
      .toContainEqual(
        expect.objectContaining({
          type: "protocol.replaced",
          protocol: { name: invented.name, version: defaultProtocol.version, hash },
        }),
      );
  });

  it("shows only what differs when asked to", async () => {
    const { page } = opened;
    const all = await page.getByRole("row").count();
    await page.getByRole("checkbox", { name: "Show only what differs" }).check();
    await expect.poll(() => page.getByRole("heading", { level: 3, name: "Tubes" }).count()).toBe(0);
    expect(await page.getByRole("row").count()).toBeLessThan(all / 5);
    expect(await rowNamed("Stand by holds prompts for").count()).toBe(1);
    await page.getByRole("checkbox", { name: "Show only what differs" }).uncheck();
  });

  it("refuses a bad file with every error in its place, and the protocol before it still counts", async () => {
    const { page } = opened;
    const before = await readFacts(page);
    const bad = { ...invented, timers: { ...invented.timers, standByS: { value: "soon" } }, caution: 3 };
    await choose(asFile("bad.json", JSON.stringify(bad)));
    await vi.waitFor(async () => expect(await main()).toContain("bad.json was not loaded"), { timeout: 60_000 });
    const text = await main();
    expect(text).toContain("caution:");
    expect(text).toContain("timers.standByS.value:");
    expect(text).toContain("timers.standByS.source:");
    expect(await rowNamed("Stand by holds prompts for").innerText()).toMatch(/77\ss/u);
    const replaced = (facts: typeof before) => facts.filter((fact) => fact.type === "protocol.replaced");
    expect(replaced(await readFacts(page))).toEqual(replaced(before));
  });

  it.each([
    { width: 1280, height: 800 },
    { width: 360, height: 640 },
  ])("has no violation and nothing beside the page at $width x $height", async (size) => {
    const { page } = opened;
    await page.setViewportSize(size);
    await page.evaluate(() => window.scrollTo(0, 0));
    const found = await page.evaluate(async (tags) => {
      const { axe } = window as unknown as { axe: Axe };
      const result = await axe.run({
        runOnly: { type: "tag", values: [...tags] },
        rules: { "color-contrast-enhanced": { enabled: true } },
      });
      return result.violations.map(({ id, nodes }) => `${id}: ${nodes.map((n) => n.target.join(" ")).join(", ")}`);
    }, RULES);
    expect(found).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)).toBe(0);
  });

  it("goes back to the bundled example", async () => {
    await opened.page.getByRole("button", { name: "Use the bundled example again" }).click();
    await expect.poll(main, { timeout: 60_000 }).toContain("Nothing differs from the bundled example.");
  });

  it("closes to the case as it was left, with the focus on the button that opened it", async () => {
    const { page } = opened;
    await page.getByRole("button", { name: "Back to the case" }).click();
    await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toBe("Protocol");
    expect(await page.getByRole("region", { name: "Perfusion" }).count()).toBe(1);
    expect(await page.getByRole("table").count()).toBe(0);
  });

  it("throws nothing and asks for nothing beyond its origin", () => {
    expect([opened.errors, opened.strayRequests]).toEqual([[], []]);
  });
});
