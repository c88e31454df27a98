import type { CompiledGrammar } from "./compiledGrammar.ts";

export type LooseArc = { readonly from: number; readonly to: number; readonly label: number };

type Loose = {
  readonly nodes: number;
  readonly startNodes: readonly number[];
  readonly finalNode: number;
  readonly silent: readonly LooseArc[];
  readonly worded: readonly LooseArc[];
};

type Packed = {
  readonly automaton: Pick<CompiledGrammar, "nodes" | "finalNode" | "silent" | "word">;
  readonly startNodes: readonly number[];
};

/**
 * Renumbers the nodes so that every silent arc leads upward, and packs the arcs by the node they leave,
 * in the order in which they were added. Expects no loop of silent arcs.
 */
export function packAutomaton(loose: Loose): Packed {
  const rank = silentOrder(loose.nodes, loose.silent);
  const silent = pack(loose.nodes, loose.silent, rank);
  const word = pack(loose.nodes, loose.worded, rank);
  return {
    automaton: {
      nodes: loose.nodes,
      finalNode: rank[loose.finalNode] ?? 0,
      silent: { start: silent.start, to: silent.to, mark: silent.label },
      word: { start: word.start, to: word.to, word: word.label },
    },
    startNodes: loose.startNodes.map((node) => rank[node] ?? 0),
  };
}

/** For each node its place in an order in which silent arcs only lead forward. */
function silentOrder(nodes: number, silent: readonly LooseArc[]): Int32Array {
  const arcs = pack(
    nodes,
    silent,
    Int32Array.from({ length: nodes }, (_, i) => i),
  );
  const waitsFor = new Int32Array(nodes);
  for (const arc of silent) waitsFor[arc.to] = (waitsFor[arc.to] ?? 0) + 1;
  const ready: number[] = [];
  for (let n = nodes - 1; n >= 0; n--) if (waitsFor[n] === 0) ready.push(n);
  const rank = new Int32Array(nodes);
  let given = 0;
  for (let node = ready.pop(); node !== undefined; node = ready.pop()) {
    rank[node] = given++;
    for (let a = (arcs.start[node + 1] ?? 0) - 1; a >= (arcs.start[node] ?? 0); a--) {
      const to = arcs.to[a] ?? 0;
      const left = (waitsFor[to] ?? 0) - 1;
      waitsFor[to] = left;
      if (left === 0) ready.push(to);
    }
  }
  if (given !== nodes) throw new Error("a loop of silent arcs: an empty expansion is repeated");
  return rank;
}

function pack(nodes: number, arcs: readonly LooseArc[], rank: Int32Array) {
  const start = new Int32Array(nodes + 1);
  for (const arc of arcs) {
    const after = (rank[arc.from] ?? 0) + 1;
    start[after] = (start[after] ?? 0) + 1;
  }
  for (let n = 0; n < nodes; n++) start[n + 1] = (start[n + 1] ?? 0) + (start[n] ?? 0);
  const next = start.slice();
  const to = new Int32Array(arcs.length);
  const label = new Int32Array(arcs.length);
  for (const arc of arcs) {
    const from = rank[arc.from] ?? 0;
    const at = next[from] ?? 0;
    next[from] = at + 1;
    to[at] = rank[arc.to] ?? 0;
    label[at] = arc.label;
  }
  return { start, to, label };
}
