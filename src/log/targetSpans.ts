import type { Protocol } from "../protocol/protocol.ts";
import { emptyCase } from "./caseState.ts";
import type { Fact, ProtocolMark } from "./facts.ts";
import { reduceFact } from "./reduceFact.ts";
import { selectTargets, type CurrentTargets } from "./targets.ts";

/** A stretch of the case in which the same targets held. */
export type TargetSpan = {
  readonly fromMs: number;
  /** None: to the end. */
  readonly toMs: number | undefined;
  /** None: another protocol counted then, whose numbers are not at hand. */
  readonly targets: CurrentTargets | undefined;
};

const isSame = (a: ProtocolMark | undefined, b: ProtocolMark): boolean =>
  a !== undefined && (a.hash ?? `${a.name} ${a.version}`) === (b.hash ?? `${b.name} ${b.version}`);

/** The limits that a record draws and sums against: two spans with the same ones are one. */
const keyOf = (targets: CurrentTargets | undefined): string =>
  targets === undefined
    ? ""
    : [
        targets.sbpMmHg.target.value,
        targets.sbpMmHg.ceiling?.value,
        targets.mapMmHg.target.value,
        targets.cppMmHg.target.value,
        targets.spo2Pct.target.value,
        targets.etco2MmHg.low,
        targets.etco2MmHg.high,
      ].join(" ");

/**
 * Which targets held when, as the case went: an age that was put right later changes them from the correction on.
 *
 * @param facts    oldest first.
 * @param protocol the protocol that `mark` is of; while another one counted there are no targets.
 */
export function targetSpans(facts: readonly Fact[], protocol: Protocol, mark: ProtocolMark): readonly TargetSpan[] {
  const spans: { fromMs: number; toMs: number | undefined; targets: CurrentTargets | undefined }[] = [];
  let state = emptyCase;
  let lastKey: string | undefined;
  for (const fact of facts) {
    state = reduceFact(state, fact);
    const targets = isSame(state.protocolMark, mark) ? selectTargets(state, protocol) : undefined;
    const key = keyOf(targets);
    if (key === lastKey) continue;
    lastKey = key;
    const before = spans.at(-1);
    if (before !== undefined) before.toMs = fact.atMs;
    spans.push({ fromMs: fact.atMs, toMs: undefined, targets });
  }
  return spans;
}
