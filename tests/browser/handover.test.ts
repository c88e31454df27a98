import { afterAll, beforeAll, expect, inject, it, vi } from "vitest";
import type { Fact } from "../../src/log/facts.ts";
import { openPage, type OpenedPage } from "./openPage.ts";
import { readFacts } from "./readFacts.ts";
import { serveBuild, type Served } from "./serveBuild.ts";

/** Invented. */
const CASE = ["thirty four year old man", "cause head injury", "130/80", "both pupils three brisk"];
const LOADING = { timeout: 60_000, interval: 200 };

let served: Served;
let opened: OpenedPage;
beforeAll(async () => {
  served = await serveBuild();
  opened = await openPage({ browserPath: inject("browserPath"), origin: served.origin });
}, 120_000);
afterAll(async () => {
  await opened.close();
  await served.close();
});

const wordsOf = (facts: readonly Fact[]) => facts.flatMap((f) => (f.type === "speech.started" ? [f.text] : []));

it("speaks the handover sentence by sentence, is cut off by a value, and goes on with the sentence that was cut", async () => {
  const { page } = opened;
  await page.getByText("Listening", { exact: true }).first().waitFor({ timeout: 60_000 });
  const type = async (line: string) => {
    await page.getByRole("textbox", { name: "Type instead of speaking" }).first().fill(line);
    await page.keyboard.press("Enter");
  };
  const isSpoken = (words: RegExp) =>
    vi.waitFor(async () => expect(wordsOf(await readFacts(page)).some((text) => words.test(text))).toBe(true), LOADING);
  await isSpoken(/./u);
  for (const line of CASE) await type(line);
  await isSpoken(/pupil/u);
  await type("handover");
  await isSpoken(/^Lowest systolic/u);
  await type("sats 97");
  await isSpoken(/^Sats ninety seven/u);
  const facts = await readFacts(page);
  const cut = facts.findLast((f) => f.type === "speech.cut");
  const cutWords = facts.flatMap((f) => (f.type === "speech.started" && f.id === cut?.startedId ? [f.text] : []));
  expect(cutWords).toEqual([expect.stringMatching(/^Lowest systolic/u)]);
  const before = wordsOf(facts).length;
  await type("go on");
  await vi.waitFor(
    async () =>
      expect(
        wordsOf(await readFacts(page))
          .slice(before)
          .join(" "),
      ).toMatch(/head injury/u),
    LOADING,
  );
  const [lead, first, next] = wordsOf(await readFacts(page)).slice(before);
  expect(lead).toBe("Going on.");
  expect(first).toBe(cutWords[0]);
  expect(next).toMatch(/^Age thirty four/u);
  await page.getByRole("region", { name: "Handover" }).getByText("Lowest MAP 97 mmHg").waitFor();
  expect(opened.errors).toEqual([]);
}, 180_000);
