import type { ScreenView } from "../app/screenView.ts";

/** Preparation by group: how many steps of each have an answer. */
export function ProgressList({ groups }: Pick<ScreenView, "groups">) {
  return (
    <section className="progress" aria-label="Preparation by group">
      <ul>
        {groups.map((group) => (
          <li key={group.id}>
            <span className="group-title">{group.title}</span>
            <progress value={group.done} max={group.total} aria-label={group.title} />
            <span className="group-count">
              {group.done} of {group.total}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}
