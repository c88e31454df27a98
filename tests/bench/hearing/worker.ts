/** One of the processes that listen: takes jobs, sends back what came of them. */
import { hasAudioSet, readNoises } from "../audioSet.ts";
import { openLab } from "../lab.ts";
import { loadFlite } from "../synth.ts";
import { halfOf } from "./conditions.ts";
import { hearJob } from "./hearJob.ts";
import type { Job } from "./jobs.ts";
import type { SetName } from "./speakers.ts";

const set = process.argv[2] as SetName;
const noises = hasAudioSet() ? halfOf(set, await readNoises()) : [];
const hear = hearJob({ lab: await openLab(), flite: await loadFlite(), noises, set });

process.on("message", (job: Job) => {
  void hear(job).then(
    (sayings) => process.send?.({ sayings }),
    (error: unknown) => process.send?.({ fault: `${JSON.stringify(job)}: ${String(error)}` }),
  );
});
process.on("disconnect", () => process.exit());
process.send?.({ ready: true });
