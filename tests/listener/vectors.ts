import { readFileSync } from "node:fs";
import { compileGrammar } from "../../src/language/jsgf/compileGrammar.ts";
import { vocabulary } from "../../src/language/jsgf/vocabulary.ts";
import { toWordGraph } from "../../src/language/jsgf/wordGraph.ts";
import { parseDictionary } from "../../src/listener/dictionary.ts";
import { buildPhoneGraph, type PhoneGraph } from "../../src/listener/phoneGraph.ts";

/** One clip of the listener's own test vectors, as its maker's slow reference pipeline heard it. */
export type Vector = {
  readonly name: string;
  readonly text: string;
  readonly grammar: string;
  readonly frames: number;
  readonly outputs: number;
  readonly free: number;
  readonly phones: number;
  readonly best: readonly { readonly words: string; readonly score: number }[];
};

const at = (file: string): URL => new URL(`./vectors/${file}`, import.meta.url);

export const VECTORS = JSON.parse(readFileSync(at("index.json"), "utf8")) as readonly Vector[];

/** The reference's best path costs more than 2 nats a phone: this project's search gives such sound up. */
const isFar = ({ best, free, phones }: Vector): boolean => ((best[0]?.score ?? -Infinity) - free) / phones < -2;
export const INSIDE = VECTORS.filter((vector) => !isFar(vector));
export const OUTSIDE = VECTORS.filter(isFar);

export function floats(file: string): Float32Array {
  const bytes = readFileSync(at(file));
  return new Float32Array(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.length));
}

/** Samples of a vector's WAV: 16 bit mono after a 44-byte header. */
export function samples(name: string): Float32Array {
  const bytes = readFileSync(at(`${name}.wav`));
  return Float32Array.from({ length: (bytes.length - 44) / 2 }, (_, i) => bytes.readInt16LE(44 + 2 * i) / 32768);
}

export function phoneGraphOf(name: string): PhoneGraph {
  const grammar = compileGrammar({ [name]: readFileSync(at(`${name}.jsgf`), "utf8") }, { grammar: name, rule: "top" });
  if (!grammar.ok) throw new Error(JSON.stringify(grammar.error));
  const dictionary = parseDictionary(readFileSync(at("words.dict"), "utf8"));
  if (!dictionary.ok) throw new Error(JSON.stringify(dictionary.error));
  const graph = buildPhoneGraph(toWordGraph(grammar.value), dictionary.value, vocabulary(grammar.value));
  if (!graph.ok) throw new Error(JSON.stringify(graph.error));
  return graph.value;
}
