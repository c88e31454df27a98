import { createMemoryFactStore } from "../../src/adapters/storage/memoryFactStore.ts";
import type { AppContext } from "../../src/app/context.ts";
import type { Utterance } from "../../src/app/ports.ts";
import { loadContext } from "../../src/cli/loadContext.ts";
import { readTalkLine } from "../../src/cli/talkLine.ts";
import { TerminalCase, type AnswerLine, type SpokeLine } from "../../src/cli/terminalCase.ts";
import type { Fact } from "../../src/log/facts.ts";

const loaded = await loadContext({});

export function testContext(): AppContext {
  if (!loaded.ok) throw new Error(loaded.error);
  return loaded.value;
}

const context = testContext();

/** Facts in short: "sbp 110, dbp 60", "struck 2", "asked sound-alike", "closed affirmed", "step suction done". */
export function shortFacts(facts: readonly Fact[]): string {
  return facts.flatMap((f) => shortFact(f) ?? []).join(", ");
}

function shortFact(f: Fact): string | undefined {
  switch (f.type) {
    case "vital.recorded":
      return [f.code, Math.round(f.value * 10) / 10, f.method, f.site, f.level, f.reaction]
        .filter((p) => p !== undefined)
        .join(" ");
    case "finding.recorded":
      return `${f.code} ${f.finding}`;
    case "sex.recorded":
      return `sex ${f.sex}`;
    case "cause.recorded":
      return `cause ${f.cause}`;
    case "herniation.recorded":
      return `herniation ${f.present ? "suspected" : "none"}`;
    case "entry.struck":
      return `struck ${f.targetIds.length}`;
    case "question.asked":
      return `asked ${f.question.reason}`;
    case "question.closed":
      return `closed ${f.outcome}`;
    case "step.called":
      return `called ${f.stepId}`;
    case "step.answered":
      return `step ${f.stepId} ${f.answer}`;
    case "standBy.started":
      return "stand by";
    case "phase.entered":
      return `phase ${f.phase}`;
    case "airway.event":
      return f.event;
    case "clock.started":
    case "clock.stopped":
      return `${f.clock} ${f.type === "clock.started" ? "starts" : "stops"}`;
    case "strength.affirmed":
      return `strength ${f.drugId} ${f.strength.amount} ${f.strength.unit} in ${f.strength.volumeMl}`;
    case "drug.given":
      return `given ${f.drugId} ${f.amount.value} ${f.amount.unit}`;
    case "infusion.set":
      return `infusion ${f.drugId} ${f.rate.value} ${f.rate.unit}`;
    case "fluid.given":
      return `fluid ${f.fluidId} ${f.volumeMl}`;
    case "cylinder.recorded":
      return `cylinder ${f.contentsL} L at ${f.flowLPerMin}`;
    case "recipe.started":
      return `recipe ${f.recipeId}`;
    case "recipe.moved":
      return `recipe step ${f.at}`;
    case "recipe.ended":
      return "recipe ended";
    case "rescue.started":
      return "rescue starts";
    case "rescue.ended":
      return "rescue ends";
    case "failure.called":
      return "failed airway";
    case "list.read":
      return `list ${f.mode}`;
    case "alert.acknowledged":
      return ["heard", f.alertId, f.key].filter((p) => p !== undefined).join(" ");
    case "alerts.paused":
      return "pause";
    case "talk.set":
      return `talk ${f.level}`;
    case "voice.set":
      return `voice pace ${f.pace} volume ${f.volume}`;
    case "speech.started":
    case "speech.cut":
    case "dose.said":
    case "prompt.announced":
      return undefined;
    case "alert.raised":
    case "alert.announced":
    case "alert.cleared":
    case "case.opened":
    case "case.closed":
    case "clock.changed":
    case "device.slept":
    case "protocol.replaced":
    case "alert.acknowledged":
    case "alerts.paused":
    case "talk.set":
    case "voice.set":
    case "speech.started":
    case "speech.cut":
      return undefined;
  }
}

export type Played = { readonly answers: readonly AnswerLine[]; readonly spoke: readonly SpokeLine[] };

/** Plays lines of the terminal's own form ("[2:00] status") through one case. */
export async function playCase(lines: readonly (string | Utterance)[]): Promise<Played> {
  const play = new TerminalCase(context, createMemoryFactStore(), "test", 1_800_000_000_000);
  await play.start();
  const answers: AnswerLine[] = [];
  const spoke: SpokeLine[] = [];
  for (const raw of lines) {
    const line = typeof raw === "string" ? readTalkLine(raw) : undefined;
    if (line?.ok === false) throw new Error(line.error);
    if (line?.value.atMs !== undefined) spoke.push(...(await play.advanceTo(line.value.atMs)));
    if (line?.value.text === "") continue;
    const utterance: Utterance =
      typeof raw === "string"
        ? { by: "typed", candidates: [{ words: line?.value.text ?? "", score: 0 }], endedAtMs: 0 }
        : raw;
    const said = await play.hear(utterance, utterance.candidates[0]?.words ?? "");
    answers.push(said.answer);
    spoke.push(...said.spoke);
  }
  return { answers, spoke };
}
