import type { RecordedCase } from "../recordedCase.ts";
import type { Strike } from "../statements.ts";
import { markup, type Html, type Piece } from "./html.ts";
import type { Times } from "./times.ts";

/** Prints what a fact says; struck through, with when and why, where it was struck. */
export type Strikable = (factId: string, text: Piece) => Html;

export const printStruck = (text: Piece, strike: Strike | undefined, times: Times): Html =>
  strike === undefined
    ? markup`${text}`
    : markup`<del>${text}</del> <b>struck</b> ${times.time(strike.atMs)}, ${strike.reason}`;

export function strikable({ facts }: RecordedCase, times: Times): Strikable {
  const strikes = new Map<string, Strike>();
  for (const fact of facts) if (fact.type === "entry.struck") for (const id of fact.targetIds) strikes.set(id, fact);
  return (factId, text) => printStruck(text, strikes.get(factId), times);
}
