import type { AlertBody } from "./condition.ts";
import type { Judged } from "./judgeAlerts.ts";
import { isNews } from "./news.ts";

/**
 * Which of several alerts of one cause speaks for all: perfusion itself before the mean, the mean before the systolic, a
 * floor before a ceiling, so that two limits that oppose each other are never said together; what is low before what may
 * become so.
 */
const ORDER: readonly string[] = ["cpp under", "map under", "sbp under", "cppBound under", "sbp over"];

function rankOf(body: AlertBody | undefined): number {
  if (body?.kind === "falling") return ORDER.length + 1;
  const place = body?.kind === "limit" ? ORDER.indexOf(`${body.code} ${body.side}`) : -1;
  return place < 0 ? ORDER.length : place;
}

/** A measured CPP speaks for every pressure; a mean for those of its own reading, but not for a systolic called later. */
const speaksFor = (candidate: Judged, news: readonly Judged[]): boolean => {
  const { body, atMs } = candidate.condition;
  if (body?.kind !== "limit") return false;
  if (body.code === "cpp") return true;
  return body.code === "map" && news.some(({ condition }) => condition.atMs <= atMs);
};

/** @param all alerts of one cause, at least one. */
export function chooseSpeaker(all: readonly Judged[]): Judged {
  const news = all.filter(isNews);
  const candidates = news.length === 0 ? all : all.filter((j) => isNews(j) || speaksFor(j, news));
  const [speaker] = [...candidates].sort((a, b) => rankOf(a.condition.body) - rankOf(b.condition.body));
  if (speaker === undefined) throw new Error("nothing to choose from");
  return speaker;
}
