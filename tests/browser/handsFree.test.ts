import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import type { Fact } from "../../src/log/facts.ts";
import { HANDS_FREE_CASE, LAST_SAID, type SpokenStep } from "./handsFreeCase.ts";
import { openPage, type OpenedPage } from "./openPage.ts";
import { readFacts } from "./readFacts.ts";
import { recordSound } from "./recordSound.ts";
import { serveBuild, type Served } from "./serveBuild.ts";
import { createSpeaker, talkingMicrophone } from "./talkingMicrophone.ts";

const MOST_TRIES = 7;

/** The question that "affirm" would answer now. */
function openQuestion(facts: readonly Fact[]): string | undefined {
  const closed = new Set(facts.flatMap((f) => (f.type === "question.closed" ? [f.questionId] : [])));
  const open = facts.flatMap((f) => (f.type === "question.asked" && !closed.has(f.question.id) ? [f.question] : []));
  return open.at(-1)?.prompt;
}

/**
 * Says a line as somebody with both hands busy would: affirms what is read back rightly, and says again what was not.
 */
async function closeTheLoop(page: Page, say: (line: string) => Promise<void>, [line, stands, readBack]: SpokenStep) {
  let next = line;
  const tries: string[] = [];
  for (let i = 0; i < MOST_TRIES; i++) {
    await say(next);
    const facts = await readFacts(page);
    if (stands(facts)) return;
    const asked = openQuestion(facts);
    tries.push(`"${next}" left ${asked === undefined ? "no question" : `"${asked}"`}`);
    const isOurs = asked !== undefined && readBack.test(asked);
    next = isOurs ? "affirm" : line;
  }
  throw new Error(`"${line}" does not stand in the record: ${tries.join("; ")}`);
}

describe("a whole intubation without a hand, from sound alone", () => {
  let served: Served;
  let opened: OpenedPage;
  let facts: readonly Fact[];
  let text: string;

  beforeAll(async () => {
    served = await serveBuild();
    const browserPath = inject("browserPath");
    opened = await openPage({ browserPath, origin: served.origin, initScripts: [talkingMicrophone, recordSound] });
    const { page } = opened;
    await page.getByText("Listening", { exact: true }).first().waitFor({ timeout: 60_000 });
    const say = await createSpeaker(page, "slt");
    for (const part of HANDS_FREE_CASE) await closeTheLoop(page, say, part);
    // It is asked for again where the words were not heard.
    const handover = page.getByRole("region", { name: "Handover" });
    for (let i = 0; i < MOST_TRIES && !(await handover.isVisible()); i++) await say(LAST_SAID);
    facts = await readFacts(page);
    text = (await page.innerText("main")).replace(/\s+/g, " ");
  }, 900_000);

  afterAll(async () => {
    await opened.close();
    await served.close();
  });

  it("needed no pointer, no key and no network", async () => {
    expect(await opened.page.evaluate(() => window.handEvents)).toBe(0);
    expect(opened.strayRequests).toEqual([]);
    expect(opened.errors).toEqual([]);
  });

  it("recorded what was said, and nothing else", () => {
    const vitals = facts.flatMap((f) => (f.type === "vital.recorded" ? [[f.code, f.value]] : []));
    expect(Object.fromEntries(vitals)).toEqual({
      age: 34,
      weight: 80,
      height: 178,
      sbp: 126,
      dbp: 74,
      hr: 92,
      spo2: 97,
      gcsEye: 2,
      gcsVerbal: 2,
      gcsMotor: 4,
      pupilLeft: 4,
      pupilRight: 4,
      etco2: 38,
    });
    const drugs = facts.flatMap((f) => (f.type === "drug.given" ? [[f.drugId, f.amount]] : []));
    expect(drugs).toEqual([
      ["ketamine", { value: 110, unit: "mg" }],
      ["rocuronium", { value: 88, unit: "mg" }],
    ]);
    expect(facts.flatMap((f) => (f.type === "airway.event" ? [f.event] : []))).toEqual([
      "bladeIn",
      "tubeIn",
      "tubeConfirmed",
    ]);
  });

  it("heard all of it, and typed nothing", () => {
    const ways = facts.flatMap((f) => ("by" in f ? [f.by] : []));
    expect(new Set(ways)).toEqual(new Set(["listener"]));
  });

  it("has settled the patient, and shows it", () => {
    expect(text).toMatch(/Settling phase/);
    expect(text).toMatch(/propofol/i);
    expect(text).toMatch(/ketamine/i);
  });

  it("keeps a value that was put right in sight, struck, and hands the case over", () => {
    expect(text).toMatch(/EtCO2 36 mmHg struck [\d:]+, corrected/);
    expect(text).toMatch(/Handover Lowest pressures Lowest MAP 91 mmHg/);
  });
});
