import { fork, type ChildProcess } from "node:child_process";
import { fileURLToPath } from "node:url";
import type { Job } from "./jobs.ts";
import type { Saying } from "./saying.ts";
import type { SetName } from "./speakers.ts";

export type Order = { readonly at: number; readonly job: Job };
export type FromWorker =
  { readonly ready: true } | { readonly at: number; readonly sayings: readonly Saying[] } | { readonly fault: string };

/** Sounds that a process hears at the same time: voice activity is much faster together. */
const AT_ONCE = 16;

const WORKER = fileURLToPath(new URL("./worker.ts", import.meta.url));

/**
 * Hears all jobs in so many processes, each with its own listener. The result is in the order of the jobs, whichever
 * process heard which. Rejects when a process dies or a job fails: a measurement with holes is none.
 */
export async function hearAll(
  jobs: readonly Job[],
  set: SetName,
  processes: number,
  onDone: (done: number) => void,
): Promise<readonly Saying[]> {
  const results: (readonly Saying[])[] = [];
  let next = 0;
  let done = 0;
  const work = (child: ChildProcess): Promise<void> =>
    new Promise((resolve, reject) => {
      let inHand = 0;
      const give = (): void => {
        const at = next++;
        const job = jobs[at];
        if (job !== undefined) {
          inHand++;
          child.send({ at, job } satisfies Order);
        } else if (inHand === 0) resolve();
      };
      child.on("message", (message: FromWorker) => {
        if ("fault" in message) return reject(new Error(message.fault));
        if ("ready" in message) {
          for (let i = 0; i < AT_ONCE; i++) give();
          return;
        }
        inHand--;
        results[message.at] = message.sayings;
        onDone(++done);
        give();
      });
      child.on("error", reject);
      child.on("exit", (code) => reject(new Error(`a listening process ended with ${code}`)));
    });
  const children = Array.from({ length: Math.min(processes, jobs.length) }, () => fork(WORKER, [set]));
  try {
    await Promise.all(children.map(work));
  } finally {
    for (const child of children) child.kill();
  }
  return results.flat();
}
