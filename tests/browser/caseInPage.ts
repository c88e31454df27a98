import { readFile } from "node:fs/promises";
import type { Download, Page } from "playwright-core";
import { sha256HexHere } from "../../src/adapters/files/webCrypto.ts";
import type { Fact } from "../../src/log/facts.ts";
import { readRecordFile } from "../../src/log/recordFile/readRecordFile.ts";

/** Types a line, and waits for the reply that begins like this. */
export async function say(page: Page, words: string, reply: RegExp): Promise<void> {
  await page.getByRole("textbox", { name: "Type instead of speaking" }).fill(words);
  await page.keyboard.press("Enter");
  await page.getByText(reply).first().waitFor({ timeout: 60_000 });
}

/** Types a line, and waits until it is shown what came of it; what is said in return may come later. */
export async function enter(page: Page, words: string, outcome: string): Promise<void> {
  await page.getByRole("textbox", { name: "Type instead of speaking" }).fill(words);
  await page.keyboard.press("Enter");
  const heard = page.locator("dd.heard", { hasText: words });
  await heard.locator(".outcome", { hasText: outcome }).waitFor({ timeout: 60_000 });
}

/** Words of ours begin to sound. */
export const spoken = (page: Page, words: RegExp): Promise<void> =>
  page.locator(".said").filter({ hasText: words }).waitFor({ timeout: 60_000 });

/** The case is open, and lines can be typed. */
export const ready = (page: Page): Promise<void> =>
  page
    .getByText(/Case (opened|resumed)/u)
    .first()
    .waitFor({ timeout: 60_000 });

export const labelOf = async (page: Page): Promise<string> =>
  (await page.locator("p.case").innerText()).replace(/^(Case|Rehearsal) |\.$/gu, "");

/** Opens the panel of the record, where it is not open. */
export async function openRecordPanel(page: Page): Promise<void> {
  const button = page.getByRole("button", { name: "Save as JSON" });
  await page.locator("summary", { hasText: "Record" }).waitFor();
  if (!(await button.isVisible())) await page.getByText("Record", { exact: true }).click();
}

/** Presses a button of that panel; the texts of the files that come, by their names without the case. */
export async function saved(page: Page, button: string, count: number): Promise<ReadonlyMap<string, string>> {
  await openRecordPanel(page);
  const downloads: Download[] = [];
  const coming = new Promise<void>((resolve) => {
    const take = (download: Download): void => {
      if (downloads.push(download) < count) return;
      page.off("download", take);
      resolve();
    };
    page.on("download", take);
  });
  await page.getByRole("button", { name: button, exact: true }).click();
  await coming;
  const texts = downloads.map(async (download) => {
    const name = download.suggestedFilename().replace(/^tragus-[a-z]+-[a-z]+-[a-z]+-/u, "");
    return [name, await readFile(await download.path(), "utf8")] as const;
  });
  return new Map(await Promise.all(texts));
}

/** The facts of the case as it is saved to a file. Throws where its chain is not whole. */
export async function savedFacts(page: Page): Promise<readonly Fact[]> {
  const text = (await saved(page, "Save as JSON", 1)).get("record.json") ?? "";
  const file = await readRecordFile(text, sha256HexHere());
  if (!file.ok) throw new Error(JSON.stringify(file.error));
  return file.value.facts;
}

/** "map 55": the values that stand among facts, in order. */
export const valuesIn = (facts: readonly Fact[]): readonly string[] =>
  facts.flatMap((fact) => (fact.type === "vital.recorded" ? [`${fact.code} ${String(fact.value)}`] : []));
