import type { GrammarName } from "../lab.ts";
import type { StatementKind } from "../../../src/listener/certainty.ts";
import type { Evidence } from "../../../src/listener/certaintyModel.ts";
import type { MeaningKind } from "../hearing/families.ts";
import type { Material } from "../hearing/saying.ts";
import { tookPart } from "../hearing/training.ts";

/** A row of `bench/evidence-*.json`, as far as the fit needs it. Rows in which nothing was heard have no `kind`. */
export type EvidenceRow = Omit<Evidence, "shape"> & {
  readonly material: Material;
  readonly speaker: string;
  readonly state: GrammarName;
  readonly said: string;
  readonly shape?: Evidence["shape"];
  readonly kind?: MeaningKind;
  readonly isRight: boolean;
  readonly isWrongIfTaken: boolean;
};

export type Heard = {
  readonly evidence: Evidence;
  readonly kind: StatementKind;
  readonly isMeant: boolean;
  readonly isRight: boolean;
  readonly isWrongIfTaken: boolean;
};

const KINDS: Readonly<Record<Exclude<MeaningKind, "none">, StatementKind>> = {
  vitals: "value",
  number: "answer",
  answer: "answer",
  step: "step",
  dose: "dose",
  command: "command",
  why: "answer",
  care: "dose",
};

const NOT_MEANT: readonly Material[] = ["talk", "near the language", "noise"];

/** The kind that a best meaning has for the app; the numbers that `hear` reports alone are believed as values are. */
const kindOf = (row: EvidenceRow, kind: Exclude<MeaningKind, "none">): StatementKind =>
  row.state === "numbers" ? "value" : KINDS[kind];

/**
 * What was heard with some meaning. People who took no part in the training of the network are left out of the set that is
 * fitted: they judge the result.
 */
export function heardWithMeaning(rows: readonly EvidenceRow[], set: "tuning" | "test"): readonly Heard[] {
  return rows.flatMap((row) => {
    const isPerson = row.material.startsWith("people");
    if (row.kind === undefined || row.kind === "none") return [];
    if (isPerson && tookPart(row.speaker) === (set === "test")) return [];
    return [
      {
        evidence: { m1: row.m1, m2: row.m2, phones: row.phones, shape: row.shape },
        kind: kindOf(row, row.kind),
        isMeant: !NOT_MEANT.includes(row.material),
        isRight: row.isRight,
        isWrongIfTaken: row.isWrongIfTaken,
      },
    ];
  });
}
