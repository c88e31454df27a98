import type { ScreenView } from "../app/screenView.ts";

type WhyProps = { readonly why: NonNullable<ScreenView["why"]> };

/** The number last explained, whole. */
export function WhyPanel({ why }: WhyProps) {
  return (
    <section className="why" aria-label="Why">
      <h2>Why</h2>
      <p className="why-text">{why.text}</p>
      <dl>
        {why.lines.map(({ label, text, sourceText }, i) => (
          <div key={i} className="why-line">
            <dt>{label}</dt>
            <dd>
              {text}
              {sourceText !== "" && <small>{sourceText}</small>}
            </dd>
          </div>
        ))}
      </dl>
    </section>
  );
}
