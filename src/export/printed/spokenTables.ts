import { VITALS } from "../../core/vitals.ts";
import type { Fact } from "../../log/facts.ts";
import type { Priority } from "../../protocol/priority.ts";
import { isWorse } from "../../protocol/priority.ts";
import type { Protocol, WatchedCode } from "../../protocol/protocol.ts";
import type { RecordedCase } from "../recordedCase.ts";
import { section, table, type Html } from "./html.ts";
import type { Times } from "./times.ts";

/** What an alert watches, as it is printed. Without a measured ICP the CPP is the best that it can be. */
const watchedName = (code: WatchedCode): string =>
  code === "cpp" ? "CPP" : code === "cppBound" ? "CPP at the lowest assumed ICP" : VITALS[code].label;

/** One standing of an alert: from when it was raised until it was cleared. */
type Standing = {
  readonly alertId: string;
  readonly fromMs: number;
  worst: Priority;
  text: string;
  announced: number;
  wordless: number;
  acknowledgedMs: number | undefined;
  end: { readonly atMs: number; readonly withdrawn: boolean } | undefined;
};

function standingsOf(facts: readonly Fact[]): readonly Standing[] {
  const all: Standing[] = [];
  const open = new Map<string, Standing>();
  for (const fact of facts) {
    if (fact.type === "alert.raised") {
      const { alertId, priority, atMs } = fact;
      const stands = open.get(alertId);
      if (stands !== undefined) {
        if (isWorse(priority, stands.worst)) stands.worst = priority;
        continue;
      }
      const begun = { worst: priority, text: "", announced: 0, wordless: 0, acknowledgedMs: undefined, end: undefined };
      const standing: Standing = { alertId, fromMs: atMs, ...begun };
      open.set(alertId, standing);
      all.push(standing);
    } else if (fact.type === "alert.announced" || fact.type === "alert.acknowledged") {
      const standing = open.get(fact.alertId);
      if (standing === undefined) continue;
      if (fact.type === "alert.acknowledged") standing.acknowledgedMs ??= fact.atMs;
      else {
        if (standing.text === "") standing.text = fact.text;
        if (fact.unspoken === true) standing.wordless += 1;
        else standing.announced += 1;
      }
    } else if (fact.type === "alert.cleared") {
      const standing = open.get(fact.alertId);
      if (standing !== undefined) standing.end = { atMs: fact.atMs, withdrawn: fact.withdrawn === true };
      open.delete(fact.alertId);
    }
  }
  return all;
}

type Utterance = { readonly text: string; readonly said: { readonly atMs: number; cut: boolean }[] };

/** What began to sound without anybody asking, the same words together. */
function unaskedOf(facts: readonly Fact[]): readonly Utterance[] {
  const byText = new Map<string, Utterance>();
  const byId = new Map<string, { cut: boolean }>();
  for (const fact of facts) {
    if (fact.type === "speech.cut") {
      const said = byId.get(fact.startedId);
      if (said !== undefined) said.cut = true;
    }
    if (fact.type !== "speech.started" || (fact.priority === "none" && fact.alertId === undefined)) continue;
    const said = { atMs: fact.atMs, cut: false };
    byId.set(fact.id, said);
    const utterance = byText.get(fact.text);
    if (utterance === undefined) byText.set(fact.text, { text: fact.text, said: [said] });
    else utterance.said.push(said);
  }
  return [...byText.values()];
}

/** "MAP under its limit"; an alert that is on no limit by its id. */
function alertName(alertId: string, { alerts }: Protocol): string {
  const rule = alerts.find(({ id }) => id === alertId);
  return rule === undefined ? alertId : `${watchedName(rule.code)} ${rule.side} its limit`;
}

/** Alerts as they stood, and the words that sounded unasked. */
export function spokenSection({ facts, protocol }: RecordedCase, times: Times): Html {
  const standings = standingsOf(facts);
  const alerts = standings.map(({ alertId, fromMs, worst, text, announced, wordless, acknowledgedMs, end }) => [
    times.time(fromMs),
    [
      end === undefined ? "still stood" : `${times.time(end.atMs)}${end.withdrawn ? ", withdrawn" : ""}`,
      ...(acknowledgedMs === undefined ? [] : [`acknowledged ${times.time(acknowledgedMs)}`]),
    ].join("; "),
    alertName(alertId, protocol),
    worst,
    text,
    wordless === 0 ? `${announced}` : `${announced}, and ${wordless} without words of its own`,
  ]);
  const unasked = unaskedOf(facts).map(({ text, said }) => [
    said.map(({ atMs, cut }) => `${times.time(atMs)}${cut ? " (cut off)" : ""}`).join(", "),
    text,
  ]);
  return section(
    "spoken",
    "Alerts, and what was said unasked",
    alerts.length === 0 ? "No alert was raised." : undefined,
    table("Alerts", ["Raised", "Cleared", "Alert", "Worst priority", "First words", "Announced"], alerts),
    table("Said unasked, by the times at which it began to sound", ["Times", "Words"], unasked),
  );
}
