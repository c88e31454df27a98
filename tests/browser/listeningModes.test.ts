import { afterAll, beforeAll, describe, expect, inject, it, vi } from "vitest";
import { openPage, type OpenedPage } from "./openPage.ts";
import { serveBuild, type Served } from "./serveBuild.ts";

describe("the listening modes in a browser", () => {
  let served: Served;
  let opened: OpenedPage;

  beforeAll(async () => {
    served = await serveBuild();
    opened = await openPage({ browserPath: inject("browserPath"), origin: served.origin });
    await vi.waitFor(() => expect(opened.page.locator("main").count()).resolves.toBe(1), { timeout: 60_000 });
  });

  afterAll(async () => {
    await opened.close();
    await served.close();
  });

  const choose = (name: string) => opened.page.getByRole("radio", { name }).check();
  const holdShows = (text: RegExp) =>
    vi.waitFor(() => expect(opened.page.locator(".hold").innerText()).resolves.toMatch(text), { timeout: 5_000 });

  it("says how to be heard in called listening, once it listens", async () => {
    await choose("Called");
    await vi.waitFor(() => expect(opened.page.innerText("body")).resolves.toMatch(/Say “tragus” first/), {
      timeout: 60_000,
    });
    expect(opened.errors).toEqual([]);
  });

  it("begins and ends a held utterance with a media key, and claims such keys by playing silence", async () => {
    const { page } = opened;
    await choose("Held");
    await vi.waitFor(() => expect(page.evaluate(() => navigator.mediaSession.playbackState)).resolves.toBe("playing"), {
      timeout: 5_000,
    });
    await page.keyboard.press("MediaPlayPause");
    await holdShows(/Talk now/);
    await page.waitForTimeout(500); // two signs in less are one press
    await page.keyboard.press("MediaPlayPause");
    await holdShows(/Hold to talk/);
  });

  it("holds with the keys that pedals send, but not while a line is typed", async () => {
    const { page } = opened;
    await page.keyboard.down("PageDown");
    await holdShows(/Talk now/);
    await page.keyboard.up("PageDown");
    await holdShows(/Hold to talk/);
    const line = page.getByRole("textbox", { name: "Type instead of speaking" });
    await line.focus();
    await page.keyboard.type("rate 90");
    await page.keyboard.press("PageDown");
    expect(await line.inputValue()).toBe("rate 90");
    await holdShows(/Hold to talk/);
  });

  it("gives the media keys back in another mode, and has switches of 48 pixels", async () => {
    const { page } = opened;
    await choose("Open");
    await vi.waitFor(() => expect(page.evaluate(() => navigator.mediaSession.playbackState)).resolves.toBe("none"));
    const heights = await page.locator(".mode").evaluateAll((all) => all.map((e) => e.getBoundingClientRect().height));
    expect(heights).toHaveLength(3);
    expect(Math.min(...heights)).toBeGreaterThanOrEqual(48);
  });
});
