import type { Cell, Table } from "../report.ts";
import type { Saying } from "./saying.ts";

/** How long the listening took. Voices and mixing are not counted; other work on the machine is. */
export function costTable(sayings: readonly Saying[]): Table {
  const rows = [...new Set(sayings.map((s) => s.material))].map((material): readonly Cell[] => {
    const some = sayings.filter((s) => s.material === material);
    const soundS = some.reduce((sum, s) => sum + s.soundS, 0);
    const clockS = some.reduce((sum, s) => sum + s.hearingMs, 0) / 1000;
    const cpuS = some.reduce((sum, s) => sum + s.cpuMs, 0) / 1000;
    const seconds = [soundS, clockS, cpuS].map((s) => Math.round(s));
    return [material, some.length, ...seconds, (clockS / soundS).toFixed(4), (cpuS / soundS).toFixed(4)];
  });
  return {
    title: "Time of listening",
    notes: ["Voice activity, features, network and search; two processes side by side, one thread each."],
    columns: [
      "what",
      "n",
      "sound s",
      "listening s, by the clock",
      "of the processor",
      "clock of real time",
      "processor of real time",
    ],
    rows,
  };
}
