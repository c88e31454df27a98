import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { join } from "node:path";
import { build } from "vite";
import type { FromPage } from "./crashMessages.ts";

const PAGE = '<!doctype html><title>crash</title><script type="module" src="/page.js"></script>';

/** The script of the page in one piece, with the app's own store in it. */
export async function buildCrashPage(): Promise<string> {
  const built = await build({
    configFile: false,
    logLevel: "error",
    build: {
      write: false,
      target: "es2022",
      minify: false,
      lib: { entry: join(import.meta.dirname, "crashPage.ts"), formats: ["es"] },
    },
  });
  const output = Array.isArray(built) ? built[0]?.output : "output" in built ? built.output : undefined;
  if (output?.length !== 1) throw new Error("the crash page did not come in one piece");
  return output[0].code;
}

export type CrashServer = {
  readonly origin: string;
  /** Who is told what a page says, and that one was asked for. */
  listen(onPage: () => void, onMessage: (message: FromPage) => void): void;
  close(): void;
};

/** Serves the page, and takes what it tells. One origin for a whole profile, or each launch would find an empty store. */
export async function openCrashServer(script: string): Promise<CrashServer> {
  let onPage = (): void => undefined;
  let onMessage: (message: FromPage) => void = () => undefined;
  const server = createServer((request, response) => {
    if (request.method === "POST") {
      let body = "";
      request.setEncoding("utf8").on("data", (text: string) => (body += text));
      // A message that was cut off by the kill never ends, and is none.
      request.on("end", () => {
        onMessage(JSON.parse(body) as FromPage);
        response.end();
      });
      return;
    }
    const { pathname } = new URL(request.url ?? "/", "http://localhost");
    const isPage = pathname === "/";
    if (isPage) onPage();
    response.statusCode = isPage || pathname === "/page.js" ? 200 : 404;
    response.setHeader("content-type", isPage ? "text/html" : "text/javascript");
    response.end(isPage ? PAGE : script);
  });
  await new Promise<void>((ready) => server.listen(0, "127.0.0.1", ready));
  return {
    origin: `http://127.0.0.1:${(server.address() as AddressInfo).port}`,
    listen: (page, message) => ([onPage, onMessage] = [page, message]),
    close() {
      server.close();
      server.closeAllConnections();
    },
  };
}
