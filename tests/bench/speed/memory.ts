import { setFlagsFromString } from "node:v8";
import { runInNewContext } from "node:vm";
import type { Listener } from "../../../src/listener/listen.ts";
import type { Table } from "../report.ts";

const MB = 2 ** 20;
const POINTS = 5;

/** The WASM memories that are made from now on. Their length is all that the runtime holds. */
export function watchWasmMemory(): () => number {
  const made: WebAssembly.Memory[] = [];
  const Original = WebAssembly.Memory;
  WebAssembly.Memory = class extends Original {
    constructor(descriptor: WebAssembly.MemoryDescriptor) {
      super(descriptor);
      made.push(this);
    }
  };
  return () => made.reduce((sum, { buffer }) => sum + buffer.byteLength, 0);
}

/** Listens to so many utterances, the sounds in turn, and looks at memory on the way, each time after a collection. */
export async function memoryTable(
  listener: Listener,
  sounds: readonly Float32Array[],
  count: number,
  wasmBytes: () => number,
): Promise<Table> {
  setFlagsFromString("--expose-gc");
  const collect = runInNewContext("gc") as () => void;
  const rows: (readonly string[])[] = [];
  const look = (utterances: number): void => {
    collect();
    const { heapUsed, arrayBuffers, rss } = process.memoryUsage();
    rows.push([String(utterances), ...[heapUsed, arrayBuffers, wasmBytes(), rss].map((b) => (b / MB).toFixed(1))]);
  };
  // Every length once, so that what grows to the largest has grown.
  for (const pcm of sounds) await listener.listen(pcm);
  look(0);
  for (let n = 1; n <= count; n++) {
    await listener.listen(sounds[n % sounds.length]!);
    if (n % Math.ceil(count / POINTS) === 0 || n === count) look(n);
  }
  const longestS = Math.max(...sounds.map((pcm) => pcm.length)) / 16_000;
  return {
    title: "Memory of features, network and search",
    notes: [
      `Node, grammar of an open case, ${sounds.length} sounds in turn (up to ${longestS.toFixed(1)} s), all heard once before the first row. ` +
        "After a forced collection. Resident memory includes everything that the process has loaded.",
    ],
    columns: ["utterances", "heap MB", "array buffers MB", "WASM memory MB", "resident MB"],
    rows,
  };
}
