import fc from "fast-check";

/** A grammar as tests make it, with its own printer and its own, plainly slow, list of what it means. */
export type Made =
  | { readonly kind: "word"; readonly word: string }
  | { readonly kind: "sequence"; readonly parts: readonly [Made, Made] }
  | { readonly kind: "choice"; readonly options: readonly [Made, Made] }
  | { readonly kind: "optional"; readonly body: Made }
  | { readonly kind: "star"; readonly body: Made }
  | { readonly kind: "plus"; readonly body: Made }
  | { readonly kind: "tagged"; readonly body: Made; readonly tag: string };

/** Only what is never empty is repeated. */
const { any: madeExpansion } = fc.letrec<{ solid: Made; any: Made }>((tie) => {
  const word = fc.constantFrom("one", "two", "ten").map((text): Made => ({ kind: "word", word: text }));
  const tag = fc.constantFrom("x", "y");
  return {
    solid: fc.oneof(
      { maxDepth: 4, withCrossShrink: true },
      word,
      fc.tuple(tie("solid"), tie("any")).map((parts): Made => ({ kind: "sequence", parts })),
      fc.tuple(tie("solid"), tie("solid")).map((options): Made => ({ kind: "choice", options })),
      tie("solid").map((body): Made => ({ kind: "plus", body })),
      fc.tuple(tie("solid"), tag).map(([body, t]): Made => ({ kind: "tagged", body, tag: t })),
    ),
    any: fc.oneof(
      { maxDepth: 4, withCrossShrink: true },
      tie("solid"),
      tie("any").map((body): Made => ({ kind: "optional", body })),
      tie("solid").map((body): Made => ({ kind: "star", body })),
      fc.tuple(tie("any"), tie("any")).map((parts): Made => ({ kind: "sequence", parts })),
      fc.tuple(tie("any"), tie("any")).map((options): Made => ({ kind: "choice", options })),
      fc.tuple(tie("any"), tag).map(([body, t]): Made => ({ kind: "tagged", body, tag: t })),
    ),
  };
});

export { madeExpansion };

function printed(made: Made): string {
  switch (made.kind) {
    case "word":
      return made.word;
    case "sequence":
      return `(${made.parts.map(printed).join(" ")})`;
    case "choice":
      return `(${made.options.map(printed).join(" | ")})`;
    case "optional":
      return `[${printed(made.body)}]`;
    case "star":
      return `(${printed(made.body)})*`;
    case "plus":
      return `(${printed(made.body)})+`;
    case "tagged":
      return `(${printed(made.body)}) {${made.tag}}`;
  }
}

export const grammarOf = (made: Made): Record<string, string> => ({
  made: `#JSGF V1.0; grammar made; public <top> = ${printed(made)};`,
});

export type MadeMark = { readonly tag: string; readonly from: number; readonly to: number };

/** Every way to go through `words` from `from` on: where it ends, and the marks passed, inner before outer. */
export function waysThrough(
  made: Made,
  words: readonly string[],
  from: number,
): readonly { readonly to: number; readonly marks: readonly MadeMark[] }[] {
  switch (made.kind) {
    case "word":
      return words[from] === made.word ? [{ to: from + 1, marks: [] }] : [];
    case "sequence":
      return waysThrough(made.parts[0], words, from).flatMap((first) =>
        waysThrough(made.parts[1], words, first.to).map((second) => ({
          to: second.to,
          marks: [...first.marks, ...second.marks],
        })),
      );
    case "choice":
      return made.options.flatMap((option) => waysThrough(option, words, from));
    case "optional":
      return [{ to: from, marks: [] }, ...waysThrough(made.body, words, from)];
    case "star":
      return [{ to: from, marks: [] }, ...waysThrough({ kind: "plus", body: made.body }, words, from)];
    case "plus":
      return waysThrough(made.body, words, from).flatMap((first) => [
        first,
        ...waysThrough(made, words, first.to).map((more) => ({ to: more.to, marks: [...first.marks, ...more.marks] })),
      ]);
    case "tagged":
      return waysThrough(made.body, words, from).map((way) => ({
        to: way.to,
        marks: [...way.marks, { tag: made.tag, from, to: way.to }],
      }));
  }
}

/** Compact and comparable: `x0-2 y2-3`. */
export const marksText = (marks: readonly MadeMark[]): string =>
  marks.map(({ tag, from, to }) => `${tag}${from}-${to}`).join(" ");
