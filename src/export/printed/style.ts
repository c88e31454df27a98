/**
 * How the record looks on A4 and Letter. Everything is told by shape, words and line, never by colour; letters are 9 pt at
 * least. All rules are below `.record`, so that the page can take the document into itself to print it.
 *
 * The mark across lies over the white of the record and under its letters, which is what the isolation is for. An engine
 * may have no boxes in the margin, and print what is fixed on the first page alone (Firefox 153 does so): so each heading,
 * figure and head of a table has the mark too, and one of these is on every page.
 *
 * @param foot  in the margin of every page.
 * @param mark  on every page; empty: nothing.
 */
export const printedStyle = (foot: string, mark: string): string => `
@page record {
  margin: 16mm 14mm 14mm;
  @top-center { content: ${quoted(mark)}; font: bold 11pt sans-serif; color: #000; }
  @bottom-left { content: ${quoted(foot)}; font: 9pt sans-serif; color: #000; }
  @bottom-right { content: "Page " counter(page) " of " counter(pages); font: 9pt sans-serif; color: #000; }
}
body:has(> .record) { margin: 0; background: #fff; }
.record, .record * { box-sizing: border-box; margin: 0; padding: 0; }
.record { page: record; isolation: isolate; max-width: 182mm; margin: 0 auto; color-scheme: light; background: #fff; color: #000; font: 9.5pt/1.3 system-ui, "Segoe UI", Roboto, Arial, sans-serif; font-variant-numeric: tabular-nums lining-nums; overflow-wrap: anywhere; }
.record :is(h1, h2, h3, th, dt, b) { color: #000; font-weight: 700; }
.record h1 { font-size: 17pt; }
.record h2 { margin: 14pt 0 4pt; border-bottom: 1.5pt solid #000; font-size: 13pt; break-after: avoid; }
.record p { margin: 3pt 0; }
.record .rehearsal { margin: 4pt 0; padding: 4pt; border: 2pt solid #000; font-size: 13pt; font-weight: 700; text-align: center; }
.record .caution { margin: 6pt 0; padding: 4pt 6pt; border: 1pt solid #000; font-weight: 700; }
.record dl { display: grid; grid-template-columns: 34mm minmax(0, 1fr); gap: 1pt 6pt; }
.record dt, .record dd { font-size: 9.5pt; }
.record table { width: 100%; margin: 5pt 0 9pt; border-collapse: collapse; font-size: 9pt; }
.record caption { padding: 2pt 0; font-size: 10pt; font-weight: 700; text-align: left; break-after: avoid; }
.record thead { display: table-header-group; break-after: avoid; }
.record tbody tr:first-child { break-before: avoid; }
.record tr { break-inside: avoid; }
.record :is(th, td) { padding: 1.5pt 4pt; border-bottom: 0.5pt solid #777; text-align: left; vertical-align: top; }
.record thead th { border-bottom: 1pt solid #000; overflow-wrap: normal; }
.record tbody th { min-width: 16mm; font-weight: 400; }
.record :is(th, td):first-child { padding-left: 0; }
${
  mark === ""
    ? ""
    : `.record :is(h2, figcaption)::after { content: ${quoted(` (${mark})`)}; }
.record thead th:first-child::before { content: ${quoted(mark)}; display: block; width: 0; white-space: nowrap; }
.record thead th:not(:first-child) { padding-top: calc(1.5pt + 1.3em); }
`
}.record del { text-decoration: line-through 1pt; }
.record ul { list-style: none; }
.record .notes { padding-left: 4mm; list-style: disc; }
.record .legend { display: flex; flex-wrap: wrap; gap: 2pt 12pt; margin: 4pt 0; break-after: avoid; break-inside: avoid; }
.record .legend li { display: flex; align-items: center; gap: 4pt; }
.record figure { margin: 4pt 0 8pt; break-inside: avoid; }
.record figcaption { font-weight: 700; }
.record svg { display: block; overflow: hidden; }
.record .defs { position: absolute; }
.record svg text { fill: #000; }
.record .across { display: none; }
@media print {
  .record { max-width: none; }
  .record .across { display: ${mark === "" ? "none" : "block"}; position: fixed; inset: 40% 0 auto; z-index: -1; color: #ccc; font-size: 40pt; text-align: center; transform: rotate(-50deg); print-color-adjust: exact; }
  .record .across::before { content: ${quoted(mark)}; }
}
`;

/** A string of CSS. */
const quoted = (text: string): string =>
  `"${text.replace(/[^\p{L}\p{N} .,:;()+-]/gu, (character) => `\\${(character.codePointAt(0) ?? 32).toString(16)} `)}"`;
