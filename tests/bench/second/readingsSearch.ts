import type { WordGraph } from "../../../src/language/jsgf/grammarTypes.ts";
import type { Dictionary } from "../../../src/listener/dictionary.ts";
import { buildPhoneGraph } from "../../../src/listener/phoneGraph.ts";
import { createSearch, type Search } from "../../../src/listener/search.ts";

/** A language of a few word sequences: what a further listening needs to choose among the first one's readings. */
export function readingsSearch(readings: readonly string[], dictionary: Dictionary): Search {
  const arcs: { from: number; to: number; word: string }[] = [];
  const finals = new Set<number>();
  let states = 1;
  for (const reading of readings) {
    let at = 0;
    for (const word of reading.split(" ")) {
      const known = arcs.find((arc) => arc.from === at && arc.word === word);
      if (known === undefined) arcs.push({ from: at, to: states, word });
      at = known?.to ?? states++;
    }
    finals.add(at);
  }
  const graph: WordGraph = { states, start: 0, finals: [...finals], arcs };
  const built = buildPhoneGraph(graph, dictionary, []);
  if (!built.ok) throw new Error(built.error.message);
  return createSearch(built.value);
}
