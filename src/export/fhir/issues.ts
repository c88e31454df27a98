import type { DetectedIssue } from "@medplum/fhirtypes";
import type { Fact } from "../../log/facts.ts";
import { isWorse, type Priority } from "../../protocol/priority.ts";
import { toSixDigits } from "../ucum.ts";
import { own } from "./codes.ts";
import { concept, period, statusOf, type Context, type Exported } from "./elements.ts";
import { resourceId } from "./resourceId.ts";

const SEVERITY = { high: "high", medium: "moderate", low: "low" } as const;

/** An alert from the fact that raised it to the one that cleared it. */
type Episode = {
  readonly raised: Extract<Fact, { readonly type: "alert.raised" }>;
  priority: Priority;
  /** What was said of it: once each time that it was raised or changed. */
  readonly texts: string[];
  isToldAnew: boolean;
  ofDevice: boolean;
  readonly acknowledgedMs: number[];
  endMs: number | undefined;
  withdrawn: boolean;
};

const begin = (raised: Episode["raised"]): Episode => ({
  raised,
  priority: raised.priority,
  texts: [],
  isToldAnew: true,
  ofDevice: false,
  acknowledgedMs: [],
  endMs: undefined,
  withdrawn: false,
});

function episodesOf(facts: readonly Fact[]): readonly Episode[] {
  const all: Episode[] = [];
  const standing = new Map<string, Episode>();
  for (const fact of facts) {
    const episode = "alertId" in fact && fact.alertId !== undefined ? standing.get(fact.alertId) : undefined;
    if (fact.type === "alert.raised" && episode === undefined) {
      const begun = begin(fact);
      standing.set(fact.alertId, begun);
      all.push(begun);
    }
    if (episode === undefined) continue;
    if (fact.type === "alert.raised") {
      if (isWorse(fact.priority, episode.priority)) episode.priority = fact.priority;
      episode.isToldAnew = true;
    } else if (fact.type === "alert.announced") {
      if (episode.isToldAnew && fact.text !== "") episode.texts.push(fact.text);
      episode.isToldAnew = false;
      episode.ofDevice ||= fact.ofDevice === true;
    } else if (fact.type === "alert.acknowledged" && fact.key === undefined) {
      episode.acknowledgedMs.push(fact.atMs);
    } else if (fact.type === "alert.cleared") {
      episode.endMs = fact.atMs;
      episode.withdrawn = fact.withdrawn === true;
      standing.delete(fact.alertId);
    }
  }
  return all;
}

function ofEpisode(context: Context, episode: Episode): DetectedIssue {
  const { raised, texts, acknowledgedMs, endMs } = episode;
  const mitigation = acknowledgedMs.map((ms) => ({ action: concept("acknowledged"), date: context.time(ms) }));
  return {
    resourceType: "DetectedIssue",
    id: resourceId(raised.id),
    ...context.meta,
    status: statusOf(episode.withdrawn),
    code: concept(raised.alertId, own(raised.alertId)),
    severity: SEVERITY[episode.priority],
    ...(episode.ofDevice ? {} : { patient: context.subject }),
    identifiedPeriod: period(context, raised.atMs, endMs),
    author: context.device,
    ...(texts.length === 0 ? {} : { detail: texts.join(" ") }),
    ...(mitigation.length === 0 ? {} : { mitigation }),
  };
}

const ofClock = (context: Context, { id, atMs, byMs }: Extract<Fact, { readonly type: "clock.changed" }>) => ({
  resourceType: "DetectedIssue" as const,
  id: resourceId(id),
  ...context.meta,
  status: "final" as const,
  code: concept("Clock of the device was set", own("clockChanged")),
  identifiedDateTime: context.time(atMs),
  author: context.device,
  detail: `Set ${byMs < 0 ? "back" : "forward"} by ${Math.abs(byMs) / 1000} s; no time in this record was moved by it.`,
});

const ofSleep = (context: Context, { id, atMs, forMs }: Extract<Fact, { readonly type: "device.slept" }>) => ({
  resourceType: "DetectedIssue" as const,
  id: resourceId(id),
  ...context.meta,
  status: "final" as const,
  code: concept("Device slept", own("deviceSlept")),
  identifiedDateTime: context.time(atMs),
  author: context.device,
  detail: `For ${toSixDigits(forMs / 1000)} s until then nothing was heard, watched or said.`,
});

/**
 * Every alert as a `DetectedIssue`, and every change of the device's clock and sleep of it. Not as a `Flag`: that has no severity, and
 * nowhere to say who took it on and when. An alert whose value was struck out is entered in error.
 */
export function issues(context: Context): readonly Exported<DetectedIssue>[] {
  const { facts } = context.recorded;
  const ofDevice = facts.flatMap((fact) =>
    fact.type === "clock.changed"
      ? [ofClock(context, fact)]
      : fact.type === "device.slept"
        ? [ofSleep(context, fact)]
        : [],
  );
  const alerts = episodesOf(facts).map((episode) => ofEpisode(context, episode));
  return [...alerts, ...ofDevice].map((resource) => ({ resource, origins: ["computed"] }));
}
