import type { ScreenView } from "../app/screenView.ts";

/** What is handed over, part by part. */
export function HandoverPanel({ handover }: Pick<ScreenView, "handover">) {
  return (
    <section className="why" aria-label="Handover">
      <h2>Handover</h2>
      <dl>
        {handover.map(({ title, text }, i) => (
          <div key={i} className="why-line">
            <dt>{title}</dt>
            <dd>{text}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}
