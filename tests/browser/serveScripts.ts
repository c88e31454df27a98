import { join } from "node:path";
import { createServer } from "vite";

const ROOT = join(import.meta.dirname, "../..");
/** Without these a browser gives pages no memory that threads share. */
const ISOLATED = { "Cross-Origin-Opener-Policy": "same-origin", "Cross-Origin-Embedder-Policy": "require-corp" };
const EMPTY_PAGE = "<!doctype html><title>scripts</title>";

export type ServedScripts = { readonly origin: string; close(): Promise<void> };

/** Serves an empty page that can import every module of the project by its path, as the development server gives it. */
export async function serveScripts(): Promise<ServedScripts> {
  const server = await createServer({
    root: ROOT,
    logLevel: "error",
    server: { host: "127.0.0.1", port: 0, headers: ISOLATED, watch: null, hmr: false },
    plugins: [
      {
        name: "empty-page",
        configureServer: ({ middlewares }) => {
          middlewares.use((request, response, next) => {
            if (request.url !== "/") return next();
            response.setHeader("Content-Type", "text/html");
            for (const [name, value] of Object.entries(ISOLATED)) response.setHeader(name, value);
            response.end(EMPTY_PAGE);
          });
        },
      },
    ],
  });
  await server.listen();
  const address = server.httpServer?.address();
  if (address === null || address === undefined || typeof address === "string") throw new Error("no port");
  return { origin: `http://127.0.0.1:${address.port}`, close: () => server.close() };
}
