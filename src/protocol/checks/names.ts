import { unique, type Faults, type Named } from "../fault.ts";
import type { Protocol } from "../protocol.ts";
import { asHeard } from "./asHeard.ts";

type Agent = { readonly id: string; readonly spoken?: readonly string[] };

const ids = (list: readonly Agent[], key: string): readonly Named[] =>
  list.map(({ id }, i) => ({ name: id, at: [key, i, "id"] }));

const spoken = (list: readonly Agent[], key: string): readonly Named[] =>
  list.flatMap((agent, i) =>
    (agent.spoken ?? []).map((words, s) => ({ name: asHeard(words), at: [key, i, "spoken", s] })),
  );

/** One id and one way of saying for each agent: a word that meant two drugs would be a guess. */
export function checkNames({ drugs, fluids, osmotics }: Protocol): Faults {
  return [
    ...unique([...ids(drugs, "drugs"), ...ids(fluids, "fluids"), ...ids(osmotics, "osmotics")], "the agent"),
    ...unique([...spoken(drugs, "drugs"), ...spoken(osmotics, "osmotics")], "the spoken form"),
  ];
}
