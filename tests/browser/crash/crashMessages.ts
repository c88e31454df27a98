import type { FactRecord } from "../../../src/adapters/storage/factDatabase.ts";
import type { FactStore, StoreError } from "../../../src/app/ports.ts";
import type { TurnName } from "./crashTurns.ts";

/** Ways to spoil the store: saying "saved" before the commit, and writing each fact of a turn by itself. */
export type Spoil = "early" | "apart";

/** What a launch found before it wrote anything. */
export type Found = {
  /** What the store gives back of the open case. */
  readonly loaded: Awaited<ReturnType<FactStore["load"]>>;
  /** Every record in the database, of all cases, as it lies there. */
  readonly records: readonly FactRecord[];
};

export type FromPage =
  | ({ readonly kind: "found" } & Found)
  | ({ readonly kind: "saved" } & TurnName)
  | ({ readonly kind: "failed"; readonly error: StoreError } & TurnName);
