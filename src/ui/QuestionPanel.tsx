import { ShapeMark } from "./ShapeMark.tsx";

/** The question that waits for an answer. Empty but present between questions, so that the next one is announced. */
export function QuestionPanel({ question }: { readonly question: string | undefined }) {
  return (
    <section className="question" aria-label="Open question" aria-live="assertive" aria-atomic="true">
      {question !== undefined && (
        <p className="question-text">
          <ShapeMark shape="query" />
          <span>{question}</span>
        </p>
      )}
    </section>
  );
}
