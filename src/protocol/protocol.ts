import type * as v from "valibot";
import type { protocolSchema } from "./schema/protocolSchema.ts";

type DeepReadonly<T> = T extends readonly (infer E)[]
  ? readonly DeepReadonly<E>[]
  : T extends object
    ? { readonly [K in keyof T]: DeepReadonly<T[K]> }
    : T;

/** A protocol that passed `validateProtocol`: every target, band, step, dose and timer, each with its source. */
export type Protocol = DeepReadonly<v.InferOutput<typeof protocolSchema>>;

export type AlertRule = Protocol["alerts"][number];
/** What an alert watches. `map` is the measured mean, else the computed one; `cpp` exists only with a measured ICP. */
export type WatchedCode = AlertRule["code"];
export type StepGroup = Protocol["groups"][number];
export type Step = StepGroup["steps"][number];
export type ConfirmRule = NonNullable<Protocol["confirm"]["sbp"]>;
export type Drug = Protocol["drugs"][number];
/** The classes of the protocol, and the osmotic agents, which are listed apart. */
export type DrugClass = Drug["class"] | "osmotic";
export type Dose = Drug["doses"][number];
export type Infusion = Drug["infusions"][number];
export type Osmotic = Protocol["osmotics"][number];
export type Population = Protocol["targets"]["populations"][number];
export type Cause = Protocol["targets"]["causes"][number]["id"];
/** A value with where it comes from, and why it and no other. */
export type Sourced<T> = {
  readonly value: T;
  readonly source: Protocol["assumedIcpMmHg"]["source"];
  readonly choice?: { readonly instead: readonly string[]; readonly reason: string };
};
