import type { PageChoice, PageRow, PageSource, PageTable } from "../app/view/protocolPageTypes.ts";
import type { Shape } from "./ShapeMark.tsx";
import { ShapeMark } from "./ShapeMark.tsx";

const MARKS: Record<Exclude<PageRow["difference"], "none">, { readonly word: string; readonly shape: Shape }> = {
  changed: { word: "changed", shape: "bars2" },
  added: { word: "added, not in the bundled example", shape: "bars2" },
  removed: { word: "removed, stands in the bundled example", shape: "dash" },
};

function Source({ source }: { readonly source: PageSource | undefined }) {
  if (source === undefined) return <span className="absent">a name or a setting: no source</span>;
  return (
    <>
      {source.reference}
      <span className="protocol-kind">
        {source.kind}; {source.read}
      </span>
    </>
  );
}

function Choice({ choice }: { readonly choice: PageChoice | undefined }) {
  if (choice === undefined) return <span className="absent">no alternative named</span>;
  return (
    <>
      <span className="protocol-word">Instead:</span> {choice.instead}. <span className="protocol-word">Why this:</span>{" "}
      {choice.reason}
    </>
  );
}

/** What stands in the bundled example where this row differs from it. */
function Bundled({ row: { bundled } }: { readonly row: PageRow }) {
  return (
    <>
      {"label" in bundled && <p className="protocol-bundled">Bundled entry: {bundled.label}</p>}
      {"value" in bundled && <p className="protocol-bundled">Bundled: {bundled.value}</p>}
      {"choice" in bundled && (
        <p className="protocol-bundled">
          Bundled choice: <Choice choice={bundled.choice} />
        </p>
      )}
    </>
  );
}

function Row({ row }: { readonly row: PageRow }) {
  const mark = row.difference === "none" ? undefined : MARKS[row.difference];
  return (
    <tr role="row" className={`protocol-row protocol-${row.difference}`}>
      <th role="rowheader" scope="row">
        {row.label}
        {mark !== undefined && (
          <span className="protocol-mark">
            <ShapeMark shape={mark.shape} />
            {mark.word}
          </span>
        )}
      </th>
      <td role="cell">
        <p className="protocol-value">{row.value}</p>
        {row.choice !== undefined && (
          <p className="protocol-choice">
            <Choice choice={row.choice} />
          </p>
        )}
        <Bundled row={row} />
      </td>
      <td role="cell" className="protocol-source">
        <Source source={row.source} />
        {"source" in row.bundled && (
          <p className="protocol-bundled">
            Bundled source: <Source source={row.bundled.source} />
          </p>
        )}
      </td>
    </tr>
  );
}

type TableProps = {
  readonly table: PageTable;
  /** The id of the heading that names it. */ readonly labelledBy: string;
};

/** Entries with their values and sources. The roles are written out: a narrow screen sets the cells below one another. */
export function ProtocolTable({ table, labelledBy }: TableProps) {
  return (
    <table role="table" className="protocol-table" aria-labelledby={labelledBy}>
      <thead role="rowgroup">
        <tr role="row">
          <th role="columnheader" scope="col">
            Entry
          </th>
          <th role="columnheader" scope="col">
            Value
          </th>
          <th role="columnheader" scope="col">
            Source
          </th>
        </tr>
      </thead>
      <tbody role="rowgroup">
        {table.rows.map((row) => (
          <Row key={row.key} row={row} />
        ))}
      </tbody>
    </table>
  );
}
