import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { format } from "prettier";
import { STATEMENT_KINDS, type StatementKind } from "../../../src/listener/certainty.ts";
import {
  certaintyBy,
  languageFeatures,
  meaningFeatures,
  type CertaintyModel,
  type Weights,
} from "../../../src/listener/certaintyModel.ts";
import { ROOT } from "../lab.ts";
import { chooseThresholds, type Allowed } from "./chooseThresholds.ts";
import { fitLogistic } from "./logisticFit.ts";
import { heardWithMeaning, type EvidenceRow, type Heard } from "./observations.ts";
import { reliability, reliabilitySvg } from "./reliability.ts";

const RIDGE = 1;
/** Half of what is heard in a room is taken to be meant for the app: a convention, as no room was recorded. */
const MEANT_SHARE = 0.5;

/** What may go wrong before any read-back, by what it would cost. This project's choice; the measured result is in the README. */
const ALLOWED: Readonly<Record<StatementKind, Allowed>> = {
  value: { wrong: 0.0005, talkTaken: 0.003, talkAsked: 0.03 },
  answer: { wrong: 0.001, talkTaken: 0.001, talkAsked: 0.02 },
  step: { wrong: 0.002, talkTaken: 0.001, talkAsked: 0.01 },
  dose: { wrong: 0, talkTaken: 0, talkAsked: 0.01 },
  command: { wrong: 0.005, talkTaken: 0.002, talkAsked: 0.01 },
};

const fileOf = (set: string): string => join(ROOT, `bench/evidence-${set}.json`);
const readSet = (set: "tuning" | "test"): readonly Heard[] =>
  heardWithMeaning(JSON.parse(readFileSync(fileOf(set), "utf8")) as EvidenceRow[], set);

const rounded = (weights: Weights): Weights => weights.map((w) => Math.round(w * 1e4) / 1e4);

function fitModel(heard: readonly Heard[]): CertaintyModel {
  const meant = heard.filter((h) => h.isMeant);
  const unmeant = heard.length - meant.length;
  const unmeantWeight = ((1 - MEANT_SHARE) / MEANT_SHARE) * (meant.length / Math.max(1, unmeant));
  const language = heard.map((h) => ({
    features: languageFeatures(h.evidence),
    isSo: h.isMeant,
    weight: h.isMeant ? 1 : unmeantWeight,
  }));
  const meaning = meant.map((h) => ({ features: meaningFeatures(h.evidence), isSo: h.isRight, weight: 1 }));
  return { language: rounded(fitLogistic(language, RIDGE)), meaning: rounded(fitLogistic(meaning, RIDGE)) };
}

const binsOf = (model: CertaintyModel, heard: readonly Heard[]) => {
  const meant = heard.filter((h) => h.isMeant).length;
  const unmeantWeight = ((1 - MEANT_SHARE) / MEANT_SHARE) * (meant / Math.max(1, heard.length - meant));
  return reliability(
    heard.map((h) => ({
      certainty: certaintyBy(model, h.evidence),
      isRight: h.isMeant && h.isRight,
      weight: h.isMeant ? 1 : unmeantWeight,
    })),
  );
};

/** Fits the decision to what `npm run bench -- hearing --set tuning` heard, and writes it where the app reads it. */
export async function runFit(): Promise<void> {
  const tuning = readSet("tuning");
  const model = fitModel(tuning);
  const judged = tuning.map((h) => ({ ...h, certainty: certaintyBy(model, h.evidence) }));
  const thresholds = chooseThresholds(judged, ALLOWED);
  const sets = [{ name: "tuning", bins: binsOf(model, tuning) }];
  if (existsSync(fileOf("test"))) sets.push({ name: "test", bins: binsOf(model, readSet("test")) });
  const data = {
    provenance: {
      madeBy: "npm run bench -- hearing --set tuning, then npm run bench -- fit",
      date: new Date().toISOString().slice(0, 10),
      heardWithMeaning: tuning.length,
      meant: tuning.filter((h) => h.isMeant).length,
      byKind: Object.fromEntries(STATEMENT_KINDS.map((kind) => [kind, tuning.filter((h) => h.kind === kind).length])),
      meantShareAssumed: MEANT_SHARE,
      ridge: RIDGE,
      allowed: ALLOWED,
      reliability: Object.fromEntries(sets.map(({ name, bins }) => [name, bins])),
    },
    model,
    thresholds,
  };
  const file = join(ROOT, "src/listener/certainty.json");
  writeFileSync(file, await format(JSON.stringify(data), { parser: "json", printWidth: 120 }));
  writeFileSync(join(ROOT, "src/listener/certainty.svg"), reliabilitySvg(sets));
  process.stdout.write(`${JSON.stringify({ model, thresholds }, null, 1)}\n`);
  for (const { name, bins } of sets) {
    process.stdout.write(`${name}\n`);
    for (const { from, n, predicted, observed } of bins)
      process.stdout.write(`  from ${from}: n ${n}, predicted ${predicted}, observed ${observed}\n`);
  }
}
