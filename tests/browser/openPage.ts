import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { chromium, type BrowserContext, type Page } from "playwright-core";

/** No looking for updates, no accounts, no names that leave this machine. */
const QUIET = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
  "--no-proxy-server",
  "--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1",
];

const FAKE_MICROPHONE = ["--use-fake-ui-for-media-stream", "--use-fake-device-for-media-stream"];

export type OpenedPage = {
  readonly page: Page;
  readonly context: BrowserContext;
  /** Addresses asked for so far that are not of the served origin, workers and service worker included. */
  readonly strayRequests: readonly string[];
  /** Errors so far: console, uncaught, crashed. */
  readonly errors: readonly string[];
  close(): Promise<void>;
};

export type OpenOptions = {
  readonly browserPath: string;
  readonly origin: string;
  /** Sound that the microphone hears once, from the moment it is opened. Without it the microphone is silent. */
  readonly microphoneWav?: string;
  /** Run in the page before any of its own scripts. */
  readonly initScripts?: readonly (() => void)[];
  /** Done to the empty page before it goes anywhere. */
  readonly prepare?: (page: Page) => Promise<void>;
};

const isLocal = (url: string, origin: string) => url.startsWith(`${origin}/`) || /^(data|blob|about):/.test(url);

/** Opens the served page in a browser of its own, with an empty profile and the microphone allowed. */
export async function openPage(options: OpenOptions): Promise<OpenedPage> {
  const { browserPath, origin, microphoneWav, initScripts = [], prepare } = options;
  const profile = mkdtempSync(join(tmpdir(), "tragus-browser-"));
  const sound = microphoneWav === undefined ? [] : [`--use-file-for-fake-audio-capture=${microphoneWav}%noloop`];
  const context = await chromium.launchPersistentContext(profile, {
    executablePath: browserPath,
    headless: true,
    args: [...QUIET, ...FAKE_MICROPHONE, ...sound],
    permissions: ["microphone"],
  });
  const strayRequests: string[] = [];
  const errors: string[] = [];
  context.on("request", (request) => {
    if (!isLocal(request.url(), origin)) strayRequests.push(request.url());
  });
  context.on("console", (message) => {
    if (message.type() === "error") errors.push(message.text());
  });
  context.on("weberror", (thrown) => errors.push(thrown.error().message));

  const page = context.pages()[0] ?? (await context.newPage());
  page.on("crash", () => errors.push("the page crashed"));
  for (const script of initScripts) await context.addInitScript(script);
  await prepare?.(page);
  await page.goto(origin, { waitUntil: "load" });
  return {
    page,
    context,
    strayRequests,
    errors,
    close: async () => {
      await context.close();
      rmSync(profile, { recursive: true, force: true });
    },
  };
}
