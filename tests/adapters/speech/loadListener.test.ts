import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import * as ort from "onnxruntime-web/wasm";
import { expect, test } from "vitest";
import { loadListener } from "../../../src/adapters/speech/loadListener.ts";
import { samples } from "../../listener/vectors.ts";

const ROOT = fileURLToPath(new URL("../../../", import.meta.url));
const resolve = createRequire(join(ROOT, "package.json")).resolve;
/** Small grammars with the rules of the real ones. "ninety six" is what the clip v2 says. */
const SOURCES = {
  case: "#JSGF V1.0; grammar case; public <open> = status; public <asked> = status | yes; public <called> = ninety six;",
};

async function load(sources: Readonly<Record<string, string>>) {
  ort.env.wasm.numThreads = 1;
  const wasm = await readFile(resolve("onnxruntime-web/ort-wasm-simd-threaded.wasm"));
  ort.env.wasm.wasmBinary = new Uint8Array(wasm).buffer;
  return loadListener({
    ort,
    readBytes: async (address) => new Uint8Array(await readFile(address)),
    assets: {
      runtime: "unused",
      network: join(ROOT, "public/listener/listener.onnx"),
      vad: resolve("@ricky0123/vad-web/dist/silero_vad_v6.onnx"),
    },
    language: {
      sources,
      dictionaryText: "status S T AE T AH S\nyes Y EH S\nninety N AY N T IY\nsix S IH K S\n",
    },
  });
}

test("called listening is compiled only when it is wanted, and then heard with", async () => {
  const loaded = await load(SOURCES);
  if (!loaded.ok) throw new Error(JSON.stringify(loaded.error));
  loaded.value.prepare("called");
  const { candidates } = await loaded.value.listen("called", samples("v2"));
  expect(candidates.map((c) => c.words)).toEqual(["ninety six"]);
});

test("a grammar without it loads all the same, and says so when it is wanted", async () => {
  const loaded = await load({ case: SOURCES.case.replace("public <called> = ninety six;", "") });
  if (!loaded.ok) throw new Error(JSON.stringify(loaded.error));
  expect(() => loaded.value.prepare("called")).toThrow();
  expect(() => loaded.value.prepare("open")).not.toThrow();
});
