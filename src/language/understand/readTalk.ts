import type { Parse } from "../jsgf/grammarTypes.ts";
import type { SaidNumber } from "../saidNumber.ts";
import type { TalkIntent } from "../talkIntent.ts";
import { tagValue } from "./tagValues.ts";

/** What is said to the voice itself; undefined: it is about something else. */
export function readTalk(parse: Parse, minutes: SaidNumber | undefined): TalkIntent | undefined {
  const heard = tagValue(parse, "heard");
  if (heard !== undefined) return { kind: "acknowledge", about: heard };
  const pause = tagValue(parse, "pause");
  if (pause === "end") return { kind: "resumeAlerts" };
  if (pause === "start") return { kind: "pauseAlerts", ...(minutes !== undefined && { minutes }) };
  const level = tagValue(parse, "talk");
  if (level !== undefined) return { kind: "talkLevel", level };
  const change = tagValue(parse, "voice");
  if (change !== undefined) return { kind: "voice", change };
  const about = tagValue(parse, "howOld");
  return about === undefined ? undefined : { kind: "howOld", about };
}
