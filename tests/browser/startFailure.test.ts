import type { Page, Route } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { CANNOT_START } from "../../src/language/sentences/protocol.ts";
import { openPage } from "./openPage.ts";
import { readFacts } from "./readFacts.ts";
import { serveBuild, type Served } from "./serveBuild.ts";

type Damage = readonly [string, string, (route: Route) => Promise<void>, RegExp];

const without = async (route: Route): Promise<void> => route.fulfill({ status: 404, body: "not found" });

/** Answers with the file that is there, one number of it changed to what no protocol may have. */
async function damaged(route: Route): Promise<void> {
  const response = await route.fetch();
  const file = (await response.json()) as { timers: { standByS: { value: number } } };
  file.timers.standByS.value = -60;
  await route.fulfill({ response, body: JSON.stringify(file) });
}

const DAMAGES: readonly Damage[] = [
  ["the bundled protocol is gone", "**/defaultProtocol-*.json", without, /defaultProtocol-\S+\.json answered 404/u],
  [
    "the bundled protocol is damaged",
    "**/defaultProtocol-*.json",
    damaged,
    /timers\.standByS\.value: must be above 0, not -60/u,
  ],
  ["a page came in its place", "**/defaultProtocol-*.json", (r) => r.fulfill({ body: "<!doctype html>" }), /not JSON/u],
  ["a grammar is gone", "**/vitals-*.jsgf", without, /vitals-\S+\.jsgf answered 404/u],
];

describe("a page that lacks what it needs", () => {
  let served: Served;

  beforeAll(async () => {
    served = await serveBuild();
  });

  afterAll(async () => {
    await served.close();
  });

  it.each(DAMAGES)("says so and starts nothing: %s", async (_what, address, answer, why) => {
    const prepare = async (page: Page): Promise<void> => void (await page.route(address, answer));
    const { page, close } = await openPage({ browserPath: inject("browserPath"), origin: served.origin, prepare });
    try {
      expect(await page.getByRole("alert").innerText()).toBe(CANNOT_START);
      expect(await page.innerText("main")).toMatch(why);
      expect([
        await page.getByRole("textbox", { name: "Type instead of speaking" }).count(),
        await page.getByRole("button").count(),
      ]).toEqual([0, 0]);
      expect(await readFacts(page).catch(() => [])).toEqual([]);
    } finally {
      await close();
    }
  });
});
