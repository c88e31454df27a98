import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, it } from "vitest";
import type { ProtocolNotice } from "../../src/app/protocolFile.ts";
import type { PageRow, ProtocolPageView } from "../../src/app/view/protocolPageTypes.ts";
import { ProtocolPage } from "../../src/ui/ProtocolPage.tsx";
import { emptyView } from "./exampleView.ts";
import { NO_ACTIONS, pageMarkup, readableText } from "./pageText.tsx";

/** Invented, for tests of the page alone: no clinical advice stands behind it. */
const row = (key: string, rest: Partial<PageRow>): PageRow => ({
  key,
  label: `entry ${key}`,
  value: `value ${key}`,
  source: { reference: `reference ${key}`, kind: "guideline", read: "not read: verify" },
  choice: { instead: `other ${key}`, reason: `reason ${key}` },
  difference: "none",
  bundled: {},
  ...rest,
});

const rows = [
  row("same", {}),
  row("bare", { source: undefined, choice: undefined }),
  row("changed", {
    difference: "changed",
    bundled: {
      label: "old entry",
      value: "old value",
      source: { reference: "old reference", kind: "label", read: "read" },
      choice: undefined,
    },
  }),
  row("added", { difference: "added" }),
  row("removed", { difference: "removed" }),
];

const page: ProtocolPageView = {
  name: "Invented protocol",
  warning: "Example protocol, not approved for patients.",
  hashText: "0123456789abcdef".repeat(4),
  signatureText: "Not signed",
  sections: [
    { key: "one", title: "Section one", tables: [{ key: "a b", title: "Table within", rows }] },
    { key: "two", title: "Section two", tables: [{ key: "only", title: "Section two", rows: [row("last", {})] }] },
  ],
  differing: 3,
  differingText: "3 entries differ.",
};

const markupOf = (notice?: ProtocolNotice) =>
  renderToStaticMarkup(<ProtocolPage page={page} notice={notice} actions={NO_ACTIONS} />);
const textOf = (notice?: ProtocolNotice) => readableText(markupOf(notice));

describe("the protocol page", () => {
  it("shows every text of the view", () => {
    const cells = page.sections
      .flatMap((section) => [section.title, ...section.tables.flatMap((t) => [t.title, ...t.rows])])
      .flatMap((entry) =>
        typeof entry === "string"
          ? [entry]
          : [
              entry.label,
              entry.value,
              entry.source?.reference,
              entry.source?.read,
              entry.choice?.instead,
              entry.choice?.reason,
            ],
      );
    const head = [page.name, page.warning, page.hashText, page.signatureText, page.differingText];
    const bundled = ["old entry", "old value", "old reference", "label; read", "no alternative named"];
    const text = textOf();
    expect([...head, ...cells, ...bundled].filter((wanted) => wanted !== undefined && !text.includes(wanted))).toEqual(
      [],
    );
  });

  it("marks what differs with a word and a shape, and nothing else", () => {
    const marks = [...markupOf().matchAll(/class="protocol-mark"><svg[^]*?<\/svg>([a-z]+)/gu)].map((match) => match[1]);
    expect(marks).toEqual(["changed", "added", "removed"]);
  });

  it("has tables with headers that a heading names", () => {
    const markup = markupOf();
    const ids = [...markup.matchAll(/ id="([^"]+)"/gu)].map((match) => match[1]!);
    expect(new Set(ids).size).toBe(ids.length);
    const named = [...markup.matchAll(/aria-labelledby="([^"]+)"/gu)].map((match) => match[1]!);
    expect(named.filter((id) => !ids.includes(id))).toEqual([]);
    const links = [...markup.matchAll(/href="#([^"]+)"/gu)].map((match) => match[1]!);
    expect(links).toHaveLength(page.sections.length);
    expect(links.filter((id) => !ids.includes(id))).toEqual([]);
    expect(markup.match(/<th role="columnheader" scope="col">/gu)).toHaveLength(6);
    expect(markup.match(/<th role="rowheader" scope="row">/gu)).toHaveLength(rows.length + 1);
    // A section of one table of the same name has that name once.
    expect(markup.match(/<h[34][^>]*>Section two</gu)).toHaveLength(1);
  });

  it("takes several files, and announces what came of them", () => {
    expect(markupOf()).toMatch(/<input type="file" multiple=""/u);
    expect(markupOf()).toMatch(/<div role="status"><\/div>/u);
    const refused = markupOf({
      kind: "refused",
      text: "bad.json was not loaded.",
      errors: ["a: is missing", "b: is odd"],
    });
    expect(refused).toMatch(/<div role="status"><div class="protocol-notice protocol-refused"/u);
    expect(readableText(refused)).toMatch(/bad\.json was not loaded\..*a: is missing.*b: is odd/u);
    const done = markupOf({ kind: "done", text: "Loaded good.json.", errors: [] });
    expect(done).toContain("Loaded good.json.");
    expect(done).not.toContain("protocol-refused");
  });
});

describe("the way to the protocol page", () => {
  it("is a button of the main page, which shows no protocol page of itself", () => {
    expect(pageMarkup(emptyView)).toMatch(/<button[^>]*>Protocol<\/button>/u);
    expect(pageMarkup(emptyView)).not.toContain("protocol-page");
  });

  it("comes with a warning on the main page while the protocol is an example", () => {
    expect(pageMarkup(emptyView)).toContain(emptyView.protocolWarning);
    expect(pageMarkup({ ...emptyView, protocolWarning: "" })).not.toContain("protocol-warning");
  });
});
