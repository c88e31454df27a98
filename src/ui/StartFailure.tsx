import { ShapeMark } from "./ShapeMark.tsx";

/** In place of the whole page where it lacks what it needs: a page that looked alive would be trusted. */
export function StartFailure({ text, detail }: { readonly text: string; readonly detail: string }) {
  return (
    <main className="opening">
      <p className="alert alert-high" role="alert">
        <ShapeMark shape="cross" />
        <span className="alert-text">{text}</span>
      </p>
      <p>{detail}</p>
    </main>
  );
}
