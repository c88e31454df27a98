import { fail, ok } from "../../core/result.ts";
import type { Fact } from "../../log/facts.ts";
import type { FactStore } from "../../app/ports.ts";

/** Keeps the facts of one run: for the terminal, where a case ends with the program, and for tests. */
export function createMemoryFactStore(): FactStore {
  let newest: readonly Fact[] = [];
  return {
    load: async () => ok(newest.at(-1)?.type === "case.closed" ? [] : newest),
    append: async (facts) => {
      if (newest.length === 0 && facts.length > 0 && facts[0]?.type !== "case.opened") {
        return fail({ kind: "write-failed", detail: "no case is open" });
      }
      const opening = facts.findLastIndex((fact) => fact.type === "case.opened");
      newest = opening < 0 ? [...newest, ...facts] : facts.slice(opening);
      return ok(undefined);
    },
    erase: async (caseId) => {
      const [first] = newest;
      if (first?.type === "case.opened" && first.caseId === caseId) newest = [];
      return ok(undefined);
    },
  };
}
