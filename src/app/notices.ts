import { CLEARED, sayRoom, showRoom } from "../language/sentences/caseRecord.ts";
import type { StorageRoom } from "./ports.ts";
import type { ProtocolNotice } from "./protocolFile.ts";
import type { TalkState } from "./talkState.ts";
import type { NewItem } from "./voiceQueue.ts";

/** Something that is not of the case. */
export type Notice = { readonly shown: Partial<TalkState>; readonly said?: readonly NewItem[] };

/** What came of a choice of protocol file; a fault at the start is said too. */
export const protocolNotice = (notice: ProtocolNotice | undefined, fault?: string): Notice => ({
  shown: { protocolNotice: notice },
  ...(fault === undefined ? {} : { said: [{ text: fault, priority: "medium", alertId: "protocol-file" }] }),
});

/** How the record is kept on this device; said where it is not kept well. */
export function roomNotice(room: StorageRoom): Notice {
  const text = sayRoom(room);
  const said: readonly NewItem[] = text === "" ? [] : [{ text, priority: "none", alertId: "room" }];
  return { shown: { roomText: showRoom(room) }, said };
}

/** The browser cleared what was recorded, in mid-case. */
export const clearedNotice: Notice = {
  shown: { roomText: CLEARED },
  said: [{ text: CLEARED, priority: "medium", alertId: "cleared" }],
};
