import { fail, ok, type Result } from "../../core/result.ts";
import { OPEN, PLAIN, type CompiledGrammar } from "./compiledGrammar.ts";
import type { Expansion, GrammarRule } from "./grammarTree.ts";
import type { GrammarError, GrammarPlace } from "./grammarTypes.ts";
import { packAutomaton, type LooseArc } from "./packAutomaton.ts";
import type { ResolvedRules } from "./resolveRules.ts";

/** Rules are laid out wherever they are used; a few lines of nested rules can ask for more than any memory holds. */
const MAX_NODES = 1_000_000;

/**
 * Lays the entry rule out as an automaton, every rule copied in at each use.
 * Expects rules without recursion and without empty loops. Errors: `unsupported` when it would grow past MAX_NODES.
 */
export function buildAutomaton(entry: GrammarRule, resolved: ResolvedRules): Result<CompiledGrammar, GrammarError> {
  const silent: LooseArc[] = [];
  const worded: LooseArc[] = [];
  const words = new Map<string, number>();
  const wordPlaces: GrammarPlace[] = [];
  const tags = new Map<string, number>();
  let nodes = 1;

  const newNode = (): number => nodes++;
  const connect = (from: number, to: number, label: number) => silent.push({ from, to, label });

  const numberOfWord = (word: string, place: GrammarPlace): number => {
    const known = words.get(word);
    if (known !== undefined) return known;
    words.set(word, wordPlaces.length);
    return wordPlaces.push(place) - 1;
  };
  const numberOfTag = (tag: string): number => {
    const known = tags.get(tag) ?? tags.size;
    tags.set(tag, known);
    return known;
  };

  /** Adds the expansion after `from`; the answer is the node where it ends. */
  const lay = (e: Expansion, from: number): number => {
    if (nodes > MAX_NODES) return from;
    switch (e.kind) {
      case "word": {
        const to = newNode();
        worded.push({ from, to, label: numberOfWord(e.word, e.place) });
        return to;
      }
      case "rule": {
        const rule = resolved.get(e);
        if (rule === undefined) throw new Error(`<${e.name}> was not resolved`);
        return lay(rule.body, from);
      }
      case "sequence":
        return e.parts.reduce((node, part) => lay(part, node), from);
      case "choice": {
        const ends = e.options.map((option) => lay(option, from));
        const to = newNode();
        for (const end of ends) connect(end, to, PLAIN);
        return to;
      }
      case "optional": {
        const end = lay(e.body, from);
        const to = newNode();
        connect(end, to, PLAIN);
        connect(from, to, PLAIN);
        return to;
      }
      case "repeat": {
        const again = newNode();
        connect(from, again, PLAIN);
        const end = lay(e.body, again);
        const to = newNode();
        connect(end, again, PLAIN);
        connect(e.atLeast === 0 ? again : end, to, PLAIN);
        return to;
      }
      case "tagged": {
        const step = (at: number, label: number): number => {
          const to = newNode();
          connect(at, to, label);
          return to;
        };
        const inside = e.tags.reduce((at) => step(at, OPEN), from);
        return e.tags.reduce((at, tag) => step(at, numberOfTag(tag)), lay(e.body, inside));
      }
    }
  };
  const finalNode = lay(entry.body, 0);
  if (nodes > MAX_NODES) {
    const message = `<${entry.name}> grows past ${MAX_NODES} states when its rules are laid out`;
    return fail({ code: "unsupported", message, place: entry.place });
  }
  const packed = packAutomaton({ nodes, startNode: 0, finalNode, silent, worded });
  return ok({ ...packed, words: [...words.keys()], wordNumbers: words, wordPlaces, tags: [...tags.keys()] });
}
