import type { StoreError } from "./ports.ts";
import type { Report } from "./session.ts";
import type { QueueItem, VoiceInput } from "./voiceQueue.ts";

type Item = Omit<QueueItem, "id">;

/** A failed write, in words: what is wrong and what to do. */
function sayStoreError(error: StoreError): string {
  switch (error.kind) {
    case "unavailable":
      return "Record not saved: storage is not available. Write it down.";
    case "quota-exceeded":
      return "Record not saved: storage is full. Write it down.";
    case "write-failed":
      return "Record not saved. Write it down.";
    case "corrupt":
      return "Part of the record could not be read. Check it against your notes.";
  }
}

/** What a report puts into the voice queue: what no longer holds goes, then alerts, then the reply. */
export function toVoice(report: Report, storeFailedBefore: boolean): readonly VoiceInput[] {
  const items: Item[] = [...report.announcements];
  if (report.saved.kind === "failed" && !storeFailedBefore)
    items.unshift({ text: sayStoreError(report.saved.error), priority: "high", alertId: "record-not-saved" });
  const reply = report.answer?.reply ?? "";
  const brisk = report.answer?.withinMs === undefined ? {} : { withinMs: report.answer.withinMs };
  if (reply !== "") items.push({ text: reply, priority: "none", alertId: undefined, ...brisk });
  const inputs: VoiceInput[] = [];
  if (report.withdrawn.length > 0) inputs.push({ kind: "withdraw", alertIds: report.withdrawn });
  if (items.length > 0) inputs.push({ kind: "say", items });
  return inputs;
}
