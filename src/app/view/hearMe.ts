import type { HearMeTalk } from "../hearMeDialogue.ts";
import { HEAR_ME_LINES } from "../hearMeLines.ts";
import { showProfile } from "../hearMeWords.ts";
import type { HearMeView } from "../screenView.ts";

/** "Hear me" for the page. */
export function viewHearMe({ running, profile, notice }: HearMeTalk, nowMs: number): HearMeView {
  return {
    running: running && {
      countText: `Line ${running.number} of ${HEAR_ME_LINES.length}`,
      line: running.line,
      prompt: running.prompt,
    },
    profileText: profile === undefined ? "" : showProfile(profile, nowMs),
    notice,
  };
}
