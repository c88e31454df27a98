import type { ScreenView } from "../app/screenView.ts";

/** Examples of what can be said now. */
export function PhraseList({ phrases }: Pick<ScreenView, "phrases">) {
  if (phrases.length === 0) return null;
  return (
    <section className="phrases" aria-label="You can say">
      <h2>You can say</h2>
      <ul>
        {phrases.map((phrase) => (
          <li key={phrase}>“{phrase}”</li>
        ))}
      </ul>
    </section>
  );
}
