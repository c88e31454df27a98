import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { chromium, type Page } from "playwright-core";
import { startBrowser, type KilledBrowser } from "./killedBrowser.ts";

declare global {
  interface Window {
    /** When the page first showed that it has resumed the case, ms after it began to load; none before. */
    resumedAtMs: number | undefined;
    /** The words that the page shows as heard and recorded, once the record holds them. */
    tellSaved?: (words: string) => Promise<void>;
  }
}

/** Runs in the page before its own scripts: tells the parent what the page shows at the moment at which it shows it. */
function watchPage(): void {
  let told = "";
  const look = (): void => {
    const text = (part: string): string => document.querySelector(part)?.textContent ?? "";
    const saving = text(".save");
    if (saving === "Case resumed") window.resumedAtMs ??= performance.now();
    const words = text(".heard-words");
    const isSaved = saving === "Saved" && text(".outcome").endsWith("recorded");
    if (!isSaved || words === told) return;
    told = words;
    void window.tellSaved?.(words);
  };
  new MutationObserver(look).observe(document, { subtree: true, childList: true, characterData: true });
}

const LOOK_EVERY_MS = 20;

/** The port on which the browser can be driven, once it has written it down. */
async function portOf(profile: string, limitMs: number): Promise<number> {
  const path = join(profile, "DevToolsActivePort");
  const untilMs = performance.now() + limitMs;
  while (performance.now() < untilMs) {
    const port = existsSync(path) ? Number(readFileSync(path, "utf8").split("\n")[0]) : 0;
    if (port > 0) return port;
    await new Promise((later) => setTimeout(later, LOOK_EVERY_MS));
  }
  throw new Error("the browser cannot be driven");
}

export type DrivenBrowser = { readonly browser: KilledBrowser; readonly page: Page };

/** A browser to be killed, driven by the test; its page has gone nowhere yet. */
export async function startDriven(
  browserPath: string,
  profile: string,
  onSaved: (words: string) => void,
): Promise<DrivenBrowser> {
  const flags = ["--remote-debugging-port=0", "--use-fake-ui-for-media-stream", "--use-fake-device-for-media-stream"];
  const browser = startBrowser(browserPath, profile, "about:blank", flags);
  const port = await portOf(profile, 30_000);
  const [context] = (await chromium.connectOverCDP(`http://127.0.0.1:${port}`)).contexts();
  const page = context?.pages()[0];
  if (page === undefined) throw new Error("the browser has no page");
  await page.exposeFunction("tellSaved", onSaved);
  await page.addInitScript(watchPage);
  return { browser, page };
}
