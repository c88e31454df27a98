import { useStore } from "zustand";
import type { ScreenActions } from "../app/screenView.ts";
import type { EntryRow } from "../app/view/entries.ts";
import { screenStore } from "./screenStore.ts";
import { ShapeMark } from "./ShapeMark.tsx";

function EntryLine({ row }: { readonly row: EntryRow }) {
  return (
    <li className="entry">
      <span className="entry-time">{row.timeText}</span>
      <div className="entry-stated">
        {row.entries.map(({ id, text, isStruck }) => (
          <p key={id}>{isStruck ? <del>{text}</del> : text}</p>
        ))}
        {row.noteText !== "" && <p className="entry-note">{row.noteText}</p>}
        {row.notSaved && (
          <p className="entry-unsaved">
            <ShapeMark shape="cross" />
            not saved
          </p>
        )}
      </div>
      <bdi className="entry-heard">{row.heardText}</bdi>
    </li>
  );
}

/** What stands in the record, the newest first; struck entries stay, struck. */
export function EntriesPanel({ actions }: { readonly actions: ScreenActions }) {
  const { rows, hasOlder, isLong } = useStore(screenStore, (state) => state.entries);
  if (rows.length === 0) return null;
  return (
    <section className="entries" aria-label="Entries">
      <h2>Entries</h2>
      <ol>
        {rows.map((row) => (
          <EntryLine key={row.id} row={row} />
        ))}
      </ol>
      {isLong && hasOlder && <p>Older entries are in the printed record.</p>}
      {(isLong || hasOlder) && (
        <button type="button" aria-expanded={isLong} onClick={() => actions.showEntries(!isLong)}>
          {isLong ? "Show the latest only" : "Show older entries"}
        </button>
      )}
    </section>
  );
}
