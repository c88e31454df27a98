import { mkdtempSync, rmSync, truncateSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { enter, labelOf, ready, saved, savedFacts, valuesIn } from "../caseInPage.ts";
import { openPage, type OpenedPage } from "../openPage.ts";
import { serveBuild, type Served } from "../serveBuild.ts";
import { FORGERIES, forged, refusedFiles, withMore } from "./hostileFiles.ts";

const SOON = { timeout: 20_000 };
const DIGITS = Object.entries({ one: 1, two: 2, three: 3, four: 4, six: 6, seven: 7, eight: 8 });

describe("a file that anybody may have made", () => {
  const folder = mkdtempSync(join(tmpdir(), "tragus-hostile-"));
  let served: Served;
  let opened: OpenedPage;
  let page: Page;
  let record = "";
  const spokenValues: string[] = [];

  const notice = (): Promise<string> => page.locator(".record-cases [role=status]").innerText();
  const add = async (text: string): Promise<void> => {
    const path = join(folder, "case.json");
    writeFileSync(path, text);
    await page.getByLabel("Add a case from JSON").setInputFiles(path);
  };
  /** The running case takes a line, and the page is what it was. */
  const goesOn = async (): Promise<void> => {
    const [word, digit] = DIGITS[spokenValues.length % DIGITS.length]!;
    await enter(page, `heart rate ninety ${word}`, "recorded");
    spokenValues.push(`hr 9${digit}`);
    const hit = await page.evaluate(() => [
      (globalThis as { wasHit?: unknown }).wasHit,
      ({} as { wasHit?: unknown }).wasHit,
    ]);
    expect(hit).toEqual([undefined, undefined]);
  };
  /** The list shows a case as chosen once it was read. */
  const choose = async (label: string): Promise<void> => {
    const list = page.locator(".record-cases select");
    await list.selectOption({ label });
    await expect.poll(() => list.locator("option:checked").innerText(), SOON).toBe(label);
  };
  /** Chooses the case, prints it and saves it in every form. Whatever of that cannot be done is said. */
  const useInEveryWay = async (label: string): Promise<void> => {
    await choose(label);
    await page.evaluate(() => dispatchEvent(new Event("beforeprint")));
    await page.evaluate(() => dispatchEvent(new Event("afterprint")));
    const told = page.locator("details.settings > [role=status]");
    for (const form of ["CSV", "FHIR", "Save as JSON"]) {
      await page.getByRole("button", { name: form, exact: true }).click();
      await page.waitForTimeout(100);
      await expect.poll(() => told.innerText(), SOON).toMatch(/^(Handed to the browser|The record did not leave)/u);
    }
  };

  beforeAll(async () => {
    served = await serveBuild();
    opened = await openPage({ browserPath: inject("browserPath"), origin: served.origin });
    page = opened.page;
    await ready(page);
    for (let lines = 0; lines < 3; lines++) await goesOn();
    record = (await saved(page, "Save as JSON", 1)).get("record.json") ?? "";
  });

  afterAll(async () => {
    await opened.close();
    await served.close();
    rmSync(folder, { recursive: true, force: true });
  });

  it("is refused in plain words where it is no record", async () => {
    for (const [what, text, words] of refusedFiles(record)) {
      await add(text);
      await expect.poll(notice, { message: what, ...SOON }).toMatch(words);
      await goesOn();
    }
  });

  it("is refused before it is read where it is far too large", async () => {
    const path = join(folder, "large.json");
    writeFileSync(path, "[");
    truncateSync(path, 1_200_000_000);
    await page.getByLabel("Add a case from JSON").setInputFiles(path);
    await expect.poll(notice, SOON).toMatch(/too large to be a record/u);
    await goesOn();
  });

  it.each(FORGERIES)("harms nothing though its chain holds: %s", async (name, isAdded, change) => {
    await add(await forged(record, name, change));
    const row = page.locator(".record-cases option", { hasText: `forged ${name}` });
    await expect.poll(notice, SOON).toMatch(isAdded ? /added\. Its chain is whole/u : /^Not added/u);
    expect(await row.count()).toBe(isAdded ? 1 : 0);
    if (isAdded) await useInEveryWay(await row.innerText());
    await goesOn();
  });

  it("prints what was heard as it stands, and turns no number round", async () => {
    const option = page.locator(".record-cases option", { hasText: "forged hostileText" });
    await choose(await option.innerText());
    await page.evaluate(() => dispatchEvent(new Event("beforeprint")));
    const printed = page.locator(".record");
    const text = await printed.innerText();
    expect(text).toContain('<img src=x onerror="globalThis.wasHit=1">');
    expect(text).not.toMatch(/[\u202a-\u202e\u2066-\u2069]/u);
    expect(await printed.locator("script, img, [onload], [onerror]").count()).toBe(0);
    await page.evaluate(() => dispatchEvent(new Event("afterprint")));
    const csv = await saved(page, "CSV", 3);
    expect([...csv.values()].join("\n")).not.toMatch(/(^|,|")[=@]HYPERLINK/mu);
    await goesOn();
  });

  it("never takes the place of the running case, which holds what was said in it and nothing else", async () => {
    const label = await labelOf(page);
    await add(withMore(await forged(record, "usurper", (fact) => fact), { opening: 1_000_000 }));
    await expect.poll(notice, SOON).toMatch(/usurper added/u);
    await page.reload();
    await page.getByText("Case resumed").waitFor({ timeout: 60_000 });
    expect(await labelOf(page)).toBe(label);
    expect(valuesIn(await savedFacts(page))).toEqual(spokenValues);
    expect(opened.errors).toEqual([]);
    expect(opened.strayRequests).toEqual([]);
  });
});
