import type { WorkerLike } from "../../../src/adapters/speech/listenerLink.ts";
import type { FromListener, ToListener } from "../../../src/adapters/speech/listenerMessages.ts";

/** A worker that does what a test says; it answers pings while `answering`. */
export class FakeListenerWorker implements WorkerLike {
  onmessage: Worker["onmessage"] = null;
  onerror: Worker["onerror"] = null;
  onmessageerror: Worker["onmessageerror"] = null;
  answering = true;
  terminated = false;
  readonly got: ToListener[] = [];

  postMessage(message: ToListener): void {
    this.got.push(message);
    if (message.op === "ping" && this.answering) this.say({ op: "pong" });
  }
  terminate(): void {
    this.terminated = true;
  }
  say(message: FromListener): void {
    this.onmessage?.call(this as unknown as Worker, { data: message } as MessageEvent<FromListener>);
  }
  crash(message: string): void {
    this.onerror?.call(this as unknown as Worker, { message } as ErrorEvent);
  }
  sendUnreadable(): void {
    this.onmessageerror?.call(this as unknown as Worker, {} as MessageEvent);
  }
  /** Operations it was told, pings left out. */
  ops(): string[] {
    return this.got.filter(({ op }) => op !== "ping").map(({ op }) => op);
  }
}
