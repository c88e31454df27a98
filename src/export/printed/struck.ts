import type { RecordedCase } from "../recordedCase.ts";
import type { Strike } from "../statements.ts";
import { markup, type Html, type Piece } from "./html.ts";
import type { Times } from "./times.ts";
import { NOT_SAVED } from "./words.ts";

/** Prints what a fact says; struck through, with when and why, where it was struck; and marked where it is not saved. */
export type Strikable = (factId: string, text: Piece) => Html;

export function strikable({ facts, unsavedIds }: RecordedCase, times: Times): Strikable {
  const strikes = new Map<string, Strike>();
  for (const fact of facts) if (fact.type === "entry.struck") for (const id of fact.targetIds) strikes.set(id, fact);
  return (factId, text) => {
    const strike = strikes.get(factId);
    const unsaved = unsavedIds.has(factId) ? markup` <b>${NOT_SAVED}</b>` : undefined;
    return strike === undefined
      ? markup`${text}${unsaved}`
      : markup`<del>${text}</del> <b>struck</b> ${times.time(strike.atMs)}, ${strike.reason}${
          unsavedIds.has(strike.id) ? markup` (<b>${NOT_SAVED}</b>)` : undefined
        }${unsaved}`;
  };
}
