/** Shapes that carry a state without colour; always beside the word for it. */
export type Shape =
  "disc" | "ring" | "dots" | "sound" | "cross" | "tick" | "query" | "dash" | "bars1" | "bars2" | "bars3" | "clock";

const PATHS: Record<Shape, string> = {
  disc: "M12 4a8 8 0 1 0 .01 0Z",
  ring: "M12 3a9 9 0 1 0 .01 0ZM12 7a5 5 0 1 1-.01 0Z",
  dots: "M4 9h4v6H4ZM10 9h4v6h-4ZM16 9h4v6h-4Z",
  sound: "M3 9h5l6-5v16l-6-5H3ZM17 8h3v8h-3Z",
  cross: "M5 2 2 5l7 7-7 7 3 3 7-7 7 7 3-3-7-7 7-7-3-3-7 7Z",
  tick: "M9 21 1 13l3-3 5 5L20 3l3 3Z",
  query: "M6 8a6 6 0 1 1 8 5.6V16h-4v-5h2a2.5 2.5 0 1 0-2.500-3ZM10 18h4v4h-4Z",
  dash: "M3 10h18v4H3Z",
  bars1: "M10 3h4v18h-4Z",
  bars2: "M6 3h4v18H6ZM14 3h4v18h-4Z",
  bars3: "M3 3h4v18H3ZM10 3h4v18h-4ZM17 3h4v18h-4Z",
  clock: "M12 2a10 10 0 1 0 .01 0ZM12 5a7 7 0 1 1-.01 0ZM11 7h2v5l4 3-1.500 2-4.500-4Z",
};

/** Hidden from assistive technology: the word beside it says the same. */
export function ShapeMark({ shape }: { readonly shape: Shape }) {
  return (
    <svg className="mark" viewBox="0 0 24 24" aria-hidden="true" focusable="false">
      <path d={PATHS[shape]} fill="currentColor" fillRule="evenodd" />
    </svg>
  );
}
