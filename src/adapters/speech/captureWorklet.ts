/**
 * Runs on the audio thread: gathers the microphone's 128-sample quanta into blocks and sends them through the port
 * it is given, past the page's thread. Nothing else happens here, as a late quantum is a hole in the sound.
 */

/** About 5 ms at 48 kHz: whoever talks over our voice waits for the block to fill. */
const BLOCK_SAMPLES = 256;

// The types of the audio thread are in no library that ships with the compiler.
declare abstract class AudioWorkletProcessor {
  readonly port: MessagePort;
}
declare function registerProcessor(name: string, processor: new () => AudioWorkletProcessor): void;

class CaptureProcessor extends AudioWorkletProcessor {
  private to: MessagePort | undefined;
  private readonly block = new Float32Array(BLOCK_SAMPLES);
  private filled = 0;
  private stopped = false;

  constructor() {
    super();
    this.port.onmessage = ({ data }: MessageEvent<{ readonly to?: MessagePort }>) => {
      this.to = data.to;
      this.stopped = data.to === undefined;
      this.filled = 0;
    };
  }

  process(inputs: readonly (readonly Float32Array[])[]): boolean {
    const quantum = inputs[0]?.[0];
    if (this.to === undefined || quantum === undefined) return !this.stopped;
    if (this.filled + quantum.length > this.block.length) this.send(this.to);
    this.block.set(quantum, this.filled);
    this.filled += quantum.length;
    if (this.filled === this.block.length) this.send(this.to);
    return true;
  }

  private send(to: MessagePort): void {
    const full = this.block.subarray(0, this.filled).slice();
    to.postMessage(full, [full.buffer]);
    this.filled = 0;
  }
}

registerProcessor("tragus-capture", CaptureProcessor);

// Makes the file a module to the compiler; nothing is exported.
export {};
