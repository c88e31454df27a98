import { describe, expect, it } from "vitest";
import { STATEMENT_KINDS, type StatementKind } from "../../../src/listener/certainty.ts";
import { chooseThresholds, type Allowed, type Judged } from "./chooseThresholds.ts";
import { reliability } from "./reliability.ts";

const same = (allowed: Allowed): Readonly<Record<StatementKind, Allowed>> =>
  Object.fromEntries(STATEMENT_KINDS.map((kind) => [kind, allowed])) as Record<StatementKind, Allowed>;
const value = (certainty: number, isMeant: boolean, isWrongIfTaken: boolean): Judged => ({
  kind: "value",
  certainty,
  isMeant,
  isWrongIfTaken,
});
/** A hundred meant, the wrong ones at these certainties, and ten that were not meant. */
const sample = (wrongAt: readonly number[], talkAt: readonly number[]): readonly Judged[] => [
  ...Array.from({ length: 100 - wrongAt.length }, () => value(0.99, true, false)),
  ...wrongAt.map((c) => value(c, true, true)),
  ...talkAt.map((c) => value(c, false, true)),
  ...Array.from({ length: 10 - talkAt.length }, () => value(0.01, false, true)),
];

describe("thresholds", () => {
  it.each([
    ["no wrong allowed", [0.96, 0.98], [], { wrong: 0, talkTaken: 0, talkAsked: 1 }, 0.981],
    ["one in a hundred allowed", [0.96, 0.98], [], { wrong: 0.01, talkTaken: 0, talkAsked: 1 }, 0.961],
    ["talk counts apart", [0.96], [0.97], { wrong: 0, talkTaken: 0, talkAsked: 1 }, 0.971],
    ["one in ten of talk allowed", [0.96], [0.97], { wrong: 0, talkTaken: 0.1, talkAsked: 1 }, 0.961],
    ["never under nine in ten, whatever was seen", [], [], { wrong: 0, talkTaken: 0, talkAsked: 1 }, 0.9],
  ] as const)("%s", (_, wrongAt, talkAt, allowed, take) => {
    expect(chooseThresholds(sample(wrongAt, talkAt), same(allowed)).value.take).toBeCloseTo(take, 6);
  });

  it("with caution half of it is allowed, and talk sets where asking begins", () => {
    const judged = sample([0.96, 0.97], [0.6, 0.7]);
    const { value: chosen } = chooseThresholds(judged, same({ wrong: 0.01, talkTaken: 0.2, talkAsked: 0.1 }));
    expect(chosen).toEqual({ take: 0.961, takeWithCaution: 0.971, ask: 0.601 });
  });
});

it("reliability compares what was predicted with what came", () => {
  const of = (certainty: number, isRight: boolean) => ({ certainty, isRight, weight: 1 });
  expect(reliability([of(0.42, true), of(0.48, false), of(0.97, true)])).toEqual([
    { from: 0.4, n: 2, predicted: 0.45, observed: 0.5 },
    { from: 0.95, n: 1, predicted: 0.97, observed: 1 },
  ]);
});
