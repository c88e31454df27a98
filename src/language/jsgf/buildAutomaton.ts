import { fail, ok, type Result } from "../../core/result.ts";
import { collectLabels } from "./collectLabels.ts";
import { OPEN, PLAIN, type CompiledGrammar } from "./compiledGrammar.ts";
import type { Expansion, GrammarRule } from "./grammarTree.ts";
import type { GrammarError } from "./grammarTypes.ts";
import { packAutomaton, type LooseArc } from "./packAutomaton.ts";
import type { ResolvedRules } from "./resolveRules.ts";

/** A rule is laid out anew wherever something else follows it; a few lines can ask for more than any memory holds. */
const MAX_NODES = 1_000_000;

/**
 * Lays the entry rules out as one automaton, from its end to its starts: whatever stands before the same rest is laid
 * out once and shared, so that a rule used in many places costs its size only once for each rest. The answer holds a
 * grammar for each entry; they differ in their start.
 *
 * Expects rules without recursion and without empty loops. Errors: `unsupported` when it would grow past MAX_NODES.
 */
export function buildAutomaton(
  entries: readonly GrammarRule[],
  resolved: ResolvedRules,
): Result<readonly CompiledGrammar[], GrammarError> {
  const { words, wordPlaces, tags } = collectLabels(entries, resolved);
  const silent: LooseArc[] = [];
  const worded: LooseArc[] = [];
  const laid = new Map<Expansion, Map<number, number>>();
  let nodes = 1;

  const newNode = (): number => nodes++;
  const connect = (from: number, to: number, label: number) => silent.push({ from, to, label });
  const bodyOf = (e: Expansion): Expansion => {
    if (e.kind !== "rule") return e;
    const rule = resolved.get(e);
    if (rule === undefined) throw new Error(`<${e.name}> was not resolved`);
    return bodyOf(rule.body);
  };

  /** The node from which the expansion leads to `to`. */
  const before = (written: Expansion, to: number): number => {
    if (nodes > MAX_NODES) return to;
    const e = bodyOf(written);
    if (e.kind === "sequence") return e.parts.reduceRight((node, part) => before(part, node), to);
    const known = laid.get(e) ?? new Map<number, number>();
    laid.set(e, known);
    const shared = known.get(to);
    if (shared !== undefined) return shared;
    const node = newNode();
    known.set(to, node);
    lead(node, e, to);
    return node;
  };

  /** Adds the expansion between two nodes. */
  const lead = (from: number, e: Expansion, to: number): void => {
    switch (e.kind) {
      case "word":
        worded.push({ from, to, label: words.get(e.word) ?? 0 });
        break;
      case "rule":
      case "sequence":
        connect(from, before(e, to), PLAIN);
        break;
      case "choice":
        for (const option of e.options) lead(from, option, to);
        break;
      case "optional":
        lead(from, e.body, to);
        connect(from, to, PLAIN);
        break;
      case "repeat": {
        const end = newNode();
        const again = before(e.body, end);
        connect(end, again, PLAIN);
        connect(end, to, PLAIN);
        connect(from, again, PLAIN);
        if (e.atLeast === 0) connect(from, to, PLAIN);
        break;
      }
      case "tagged": {
        const step = (after: number, label: number): number => {
          const node = newNode();
          connect(node, after, label);
          return node;
        };
        const closed = e.tags.reduceRight((after, tag) => step(after, tags.get(tag) ?? 0), to);
        const inside = before(e.body, closed);
        const opened = e.tags.slice(1).reduce((after) => step(after, OPEN), inside);
        connect(from, opened, OPEN);
        break;
      }
    }
  };
  const finalNode = 0;
  const startNodes: number[] = [];
  for (const entry of entries) {
    startNodes.push(before(entry.body, finalNode));
    if (nodes > MAX_NODES) {
      const message = `<${entry.name}> grows past ${MAX_NODES} states when its rules are laid out`;
      return fail({ code: "unsupported", message, place: entry.place });
    }
  }
  const packed = packAutomaton({ nodes, startNodes, finalNode, silent, worded });
  const labels = { words: [...words.keys()], wordNumbers: words, wordPlaces, tags: [...tags.keys()] };
  return ok(packed.startNodes.map((startNode) => ({ ...packed.automaton, startNode, ...labels })));
}
