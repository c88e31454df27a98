import { describe, expect, it } from "vitest";
import { checkedMmHg } from "../../src/core/mmHg.ts";
import { belowTarget } from "../../src/log/belowTarget.ts";
import type { CurrentTargets } from "../../src/log/targets.ts";
import { targetSpans, type TargetSpan } from "../../src/log/targetSpans.ts";
import { selectPerfusionPressures } from "../../src/log/pressureSeries.ts";
import { defaultProtocol } from "../../src/protocol/defaultProtocol.ts";
import { CaseBuilder } from "./caseBuilder.ts";

const MIN_MS = 60_000;
const GAP_MS = 10 * MIN_MS;
type Row = readonly [min: number, mmHg: number];
const series = (rows: readonly Row[]) => rows.map(([min, mmHg]) => ({ atMs: min * MIN_MS, mmHg: checkedMmHg(mmHg) }));

/** Spans whose only target is a mean: "from minute, floor"; no floor where none is known. */
const spans = (...rows: readonly (readonly [fromMin: number, floor: number | undefined])[]): readonly TargetSpan[] =>
  rows.map(([fromMin, floor], i) => {
    const next = rows[i + 1];
    const targets = { mapMmHg: { target: { value: floor } } } as CurrentTargets;
    return {
      fromMs: fromMin * MIN_MS,
      toMs: next && next[0] * MIN_MS,
      targets: floor === undefined ? undefined : targets,
    };
  });
const sum = (rows: readonly Row[], over: readonly TargetSpan[]) =>
  belowTarget(series(rows), over, (targets) => targets.mapMmHg.target.value, GAP_MS);

// The two worked series of depth and duration, split exactly at the floor: by hand.
const SBP: readonly Row[] = [
  [0, 100],
  [4, 80],
  [10, 70],
  [14, 94],
];
const CPP: readonly Row[] = [
  [0, 66],
  [5, 56],
  [10, 50],
  [15, 64],
];

describe("below a target", () => {
  it.each<[string, readonly Row[], readonly TargetSpan[], readonly [dose: number, below: number, unknown: number]]>([
    ["one floor of 90", SBP, spans([0, 90]), [133.333, 11.333, 0]],
    ["one floor of 60", CPP, spans([0, 60]), [56.857, 10.571, 0]],
    ["the same floor in two spans", SBP, spans([0, 90], [7, 90]), [133.333, 11.333, 0]],
    ["a span that begins at a reading", SBP, spans([0, 90], [4, 90], [10, 90]), [133.333, 11.333, 0]],
    // 80 throughout; floor 90 for four minutes, then 85: 4 × 10 + 6 × 5.
    [
      "a floor that falls between two readings",
      [
        [0, 80],
        [10, 80],
      ],
      spans([0, 90], [4, 85]),
      [70, 10, 0],
    ],
    // From 100 down to 80 in ten minutes: 90 at minute 5. Floor 80 until minute 5 adds nothing, then 90: ½ × 5 × 10.
    [
      "a floor that rises between two readings",
      [
        [0, 100],
        [10, 80],
      ],
      spans([0, 80], [5, 90]),
      [25, 5, 0],
    ],
    [
      "a gap",
      [
        [0, 80],
        [10.5, 80],
      ],
      spans([0, 90]),
      [0, 0, 10.5],
    ],
    [
      "a gap over a change of the floor",
      [
        [0, 80],
        [4, 80],
        [20, 80],
        [21, 80],
      ],
      spans([0, 90], [10, 90]),
      [50, 5, 16],
    ],
    [
      "a stretch without a known floor",
      [
        [0, 80],
        [10, 80],
      ],
      spans([0, undefined], [4, 90]),
      [60, 6, 4],
    ],
    ["no reading", [], spans([0, 90]), [0, 0, 0]],
    ["one reading", [[3, 80]], spans([0, 90]), [0, 0, 0]],
  ])("%s", (_what, rows, over, [dose, below, unknown]) => {
    const found = sum(rows, over);
    expect(found.doseMmHgMin).toBeCloseTo(dose, 3);
    expect(found.belowMin).toBeCloseTo(below, 3);
    expect(found.unknownMin).toBeCloseTo(unknown, 9);
  });

  it("counts each reading once, against the floor of its time", () => {
    expect(sum(SBP, spans([0, 90], [4, 75], [10, 75]))).toMatchObject({
      readings: 4,
      readingsBelow: 1,
      lowest: { mmHg: 70, atMs: 10 * MIN_MS },
    });
  });
});

const MARK = { name: "n", version: "1", hash: "a" };

describe("targets as they held", () => {
  it("follow cause and herniation from the time at which they were said", () => {
    const c = new CaseBuilder();
    c.add({ type: "case.opened", caseId: "c", label: "kilo four seven", rehearsal: false, protocol: MARK });
    c.at(60).patient({ ageA: 40 });
    c.at(120).patient({ cause: "bleed" });
    c.at(180).patient({ herniation: true });
    c.at(240).say({ hr: 80 });
    const found = targetSpans(c.facts, defaultProtocol, MARK);
    expect(
      found.map(({ fromMs, toMs, targets }) => [
        fromMs / 1000,
        toMs && toMs / 1000,
        targets?.sbpMmHg.ceiling?.value,
        targets?.etco2MmHg.low,
      ]),
    ).toEqual([
      [0, 120, undefined, 35],
      [120, 180, 150, 35],
      [180, undefined, undefined, 30],
    ]);
  });

  it("are not known while another protocol counted", () => {
    const c = new CaseBuilder();
    c.add({
      type: "case.opened",
      caseId: "c",
      label: "kilo four seven",
      rehearsal: false,
      protocol: { ...MARK, hash: "b" },
    });
    c.at(60).add({ type: "protocol.replaced", protocol: MARK });
    expect(
      targetSpans(c.facts, defaultProtocol, MARK).map(({ fromMs, targets }) => [fromMs, targets !== undefined]),
    ).toEqual([
      [0, false],
      [60_000, true],
    ]);
  });
});

describe("perfusion pressures", () => {
  it("come of each mean and each ICP with the newest of the other, within the limit on gaps", () => {
    const c = new CaseBuilder();
    c.at(0).say({ map: 80 });
    c.at(60).say({ icp: 20 });
    c.at(120).say({ map: 70, icp: 15 });
    const struck = c.at(180).say({ icp: 40 });
    c.strike(...struck);
    c.at(240).say({ sbp: 120, dbp: 60 });
    c.at(1200).say({ map: 90 });
    expect(selectPerfusionPressures(c.state, defaultProtocol).map(({ atMs, mmHg }) => [atMs / 1000, mmHg])).toEqual([
      [60, 60],
      [120, 55],
      [240, 65],
    ]);
  });
});
