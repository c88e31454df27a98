import { ConsoleStdout, File, OpenFile, PreopenDirectory, WASI } from "@bjorn3/browser_wasi_shim";

/** What one run of the synthesiser left behind. */
export type FliteRun = {
  readonly exitCode: number;
  readonly printed: string;
  /** The RIFF file it wrote to `WAV_PATH`, when it wrote one. */
  readonly wav: Uint8Array | undefined;
};

const FOLDER = "/out";
const WAV_NAME = "speech.wav";
/** Where a run must write its sound for it to be found: pass after `-o`. */
export const WAV_PATH = `${FOLDER}/${WAV_NAME}`;

/**
 * Runs the synthesiser once, as the command-line program that it is. Every run gets a fresh instance, so a fault
 * in one sentence cannot reach the next.
 *
 * @param args after the program's name; ASCII only, since the WASI layer counts UTF-16 units but writes UTF-8 bytes.
 * Errors: throws what the program throws when it traps. Not for the browser's main thread: it blocks.
 */
export function runFlite(program: WebAssembly.Module, args: readonly string[]): FliteRun {
  const decoder = new TextDecoder();
  let printed = "";
  const print = () => new ConsoleStdout((bytes) => void (printed += decoder.decode(bytes)));
  const folder = new PreopenDirectory(FOLDER, new Map());
  const wasi = new WASI(["flite", ...args], [], [new OpenFile(new File([])), print(), print(), folder], {
    debug: false,
  });
  const instance = new WebAssembly.Instance(program, { wasi_snapshot_preview1: wasi.wasiImport });
  const exitCode = wasi.start(instance as Parameters<WASI["start"]>[0]);
  const file = folder.dir.contents.get(WAV_NAME);
  return { exitCode, printed, wav: file instanceof File ? file.data : undefined };
}
