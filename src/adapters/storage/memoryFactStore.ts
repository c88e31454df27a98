import { fail, ok } from "../../core/result.ts";
import type { Fact } from "../../log/facts.ts";
import type { FactStore } from "../../app/ports.ts";

/** Keeps the facts of one run: for the terminal, where a case ends with the program, and for tests. */
export function createMemoryFactStore(): FactStore {
  let openCase: readonly Fact[] = [];
  return {
    load: async () => ok(openCase),
    append: async (facts) => {
      if (openCase.length === 0 && facts.length > 0 && facts[0]?.type !== "case.opened") {
        return fail({ kind: "write-failed", detail: "no case is open" });
      }
      const opening = facts.findLastIndex((fact) => fact.type === "case.opened");
      openCase = opening < 0 ? [...openCase, ...facts] : facts.slice(opening);
      return ok(undefined);
    },
  };
}
