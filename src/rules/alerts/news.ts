import type { Judged } from "./judgeAlerts.ts";

/** Raised, but the words never left: the page was reloaded in between, or it was to be quiet. */
const isUnsaid = ({ before }: Judged): boolean =>
  before !== undefined && before.raisedAtSeq > (before.announcedAtSeq ?? -Infinity);

/** There is something to say of it that was not said yet. */
export const isNews = (judged: Judged): boolean =>
  judged.change === "raised" || judged.change === "worse" || judged.change === "restated" || isUnsaid(judged);
