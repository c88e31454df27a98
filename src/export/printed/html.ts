import { escapeMarkup } from "../escapeMarkup.ts";

/** Text that is HTML already. Only `markup` makes it, so nothing that was heard gets there unescaped. */
export class Html {
  readonly text: string;
  constructor(text: string) {
    this.text = text;
  }
}

export type Piece = string | number | Html | undefined | readonly Piece[];

function written(piece: Piece): string {
  if (piece === undefined) return "";
  if (piece instanceof Html) return piece.text;
  if (typeof piece === "object") return piece.map(written).join("");
  return escapeMarkup(String(piece));
}

/** A template of HTML or SVG: what is put into it is escaped unless it is `Html` itself. */
export const markup = (parts: TemplateStringsArray, ...pieces: readonly Piece[]): Html =>
  new Html(parts.reduce((text, part, i) => text + written(pieces[i - 1]) + part));

/** A table whose head repeats on each page. Cells of the first column are the heads of their rows. Nothing without rows. */
export const table = (caption: string, heads: readonly string[], rows: readonly (readonly Piece[])[]): Html =>
  rows.length === 0
    ? markup``
    : markup`<table><caption>${caption}</caption><thead><tr>${heads.map((head) => markup`<th scope="col">${head}</th>`)}</tr></thead><tbody>${rows.map(
        ([first, ...rest]) =>
          markup`<tr><th scope="row">${first}</th>${rest.map((cell) => markup`<td>${cell}</td>`)}</tr>`,
      )}</tbody></table>`;

/** A part of the record with its heading. */
export const section = (id: string, title: string, ...body: readonly Piece[]): Html =>
  markup`<section aria-labelledby="${id}"><h2 id="${id}">${title}</h2>${body}</section>`;
