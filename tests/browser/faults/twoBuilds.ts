import { cpSync, mkdtempSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { preview } from "vite";

const ROOT = join(import.meta.dirname, "../../..");
/** Texts in which a file of the build is named. */
const NAMES_FILES = /\.(js|html)$/u;

export type TwoBuilds = {
  readonly origin: string;
  /** Puts a later build in the place of the one that is served, whose own files are then gone. */
  update(): void;
  close(): Promise<void>;
};

/** Every file below a folder, by its path from there. */
const filesIn = (folder: string): readonly string[] =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map(({ parentPath, name }) => join(parentPath, name));

/**
 * Serves a copy of the build, and then another that differs as the next build does: its page says so, and its code has other
 * names.
 */
export async function serveTwoBuilds(): Promise<TwoBuilds> {
  const folder = mkdtempSync(join(tmpdir(), "tragus-builds-"));
  cpSync(join(ROOT, "dist"), folder, { recursive: true });
  const server = await preview({
    root: ROOT,
    logLevel: "error",
    build: { outDir: folder },
    preview: { host: "127.0.0.1", port: 0, strictPort: false, open: false },
  });
  const address = server.httpServer.address();
  if (address === null || typeof address === "string") throw new Error("the preview server has no port");
  return {
    origin: `http://127.0.0.1:${String(address.port)}`,
    update() {
      const named = filesIn(folder).filter((path) => /\/assets\/(later\/.*|index-[^/]*)\.js$/u.test(path));
      const names = named.map((path) => path.slice(path.lastIndexOf("/") + 1, -".js".length));
      for (const path of named) renameSync(path, path.replace(/\.js$/u, "-next.js"));
      for (const path of filesIn(folder).filter((each) => NAMES_FILES.test(each))) {
        let text = readFileSync(path, "utf8");
        for (const name of names) text = text.replaceAll(`${name}.js`, `${name}-next.js`);
        if (path.endsWith("/index.html")) text = text.replace("<head>", '<head><meta name="build" content="next">');
        if (path.endsWith("/sw.js"))
          text = text.replace(
            /(index\.html"[^}]*?"?revision"?:")[0-9a-f]+|("?revision"?:")[0-9a-f]+("[^}]*?index\.html")/u,
            "$1$2" + "0".repeat(32) + "$3",
          );
        writeFileSync(path, text);
      }
    },
    close: async () => {
      await server.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
