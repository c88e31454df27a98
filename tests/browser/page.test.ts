import { afterAll, beforeAll, describe, expect, inject, it } from "vitest";
import { openPage, type OpenedPage } from "./openPage.ts";
import { serveBuild, type Served } from "./serveBuild.ts";

describe("the built page", () => {
  let served: Served;
  let opened: OpenedPage;

  beforeAll(async () => {
    served = await serveBuild();
    opened = await openPage({ browserPath: inject("browserPath"), origin: served.origin });
    await opened.page.locator("main").waitFor();
    await opened.page.waitForLoadState("networkidle");
  });

  afterAll(async () => {
    await opened.close();
    await served.close();
  });

  it("has the project's name as its title", async () => {
    expect(await opened.page.title()).toContain("Tragus");
  });

  it("shows the cautions", async () => {
    await expect.poll(() => opened.page.innerText("body")).toMatch(/not a certified medical device/i);
  });

  it("loads without an error", () => {
    expect(opened.errors).toEqual([]);
  });

  it("asks for nothing beyond its origin", () => {
    expect(opened.strayRequests).toEqual([]);
  });
});
