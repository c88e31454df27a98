/** One of the processes that listen: takes jobs, sends back what came of them. */
import { hasAudioSet, readNoises } from "../audioSet.ts";
import { openLab } from "../lab.ts";
import { loadFlite } from "../synth.ts";
import { halfOf } from "./conditions.ts";
import { hearJob } from "./hearJob.ts";
import type { FromWorker, Order } from "./pool.ts";
import type { SetName } from "./speakers.ts";

const set = process.argv[2] as SetName;
const noises = hasAudioSet() ? halfOf(set, await readNoises()) : [];
const hear = hearJob({ lab: await openLab(), flite: await loadFlite(), noises, set });

const tell = (message: FromWorker): void => void process.send?.(message);

process.on("message", ({ at, job }: Order) => {
  void hear(job).then(
    (sayings) => tell({ at, sayings }),
    (error: unknown) => tell({ fault: `${JSON.stringify(job)}: ${String(error)}` }),
  );
});
process.on("disconnect", () => process.exit());
tell({ ready: true });
