import { join } from "node:path";
import { preview } from "vite";

const ROOT = join(import.meta.dirname, "../..");

export type Served = { readonly origin: string; close(): Promise<void> };

/** Serves `dist/` as `npm start` does, on a free port of this machine. */
export async function serveBuild(): Promise<Served> {
  const server = await preview({
    root: ROOT,
    logLevel: "error",
    preview: { host: "127.0.0.1", port: 0, strictPort: false, open: false },
  });
  const address = server.httpServer.address();
  if (address === null || typeof address === "string") throw new Error("the preview server has no port");
  return {
    origin: `http://127.0.0.1:${String(address.port)}`,
    close: () => server.close(),
  };
}
