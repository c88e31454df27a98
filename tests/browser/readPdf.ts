import { inflateSync } from "node:zlib";

/**
 * Reads the text of a PDF that Chromium wrote, page by page. Only what its writer uses: one level of objects, deflated
 * streams, fonts with a ToUnicode map (ISO 32000-1, 7.3, 7.7.3, 9.10). Ligatures are taken apart.
 */
export function readPdf(
  bytes: Buffer,
): { readonly text: string; readonly widthPt: number; readonly heightPt: number }[] {
  const raw = bytes.toString("latin1");
  const objects = new Map<number, { head: string; stream: Buffer | undefined }>();
  for (const found of raw.matchAll(/(\d+) 0 obj\n/gu)) {
    const from = found.index + found[0].length;
    const streamAt = raw.indexOf("stream\n", from);
    const endAt = raw.indexOf("endobj", from);
    const hasStream = streamAt >= 0 && streamAt < endAt;
    const head = raw.slice(from, hasStream ? streamAt : endAt);
    const length = Number(/\/Length (\d+)/u.exec(head)?.[1] ?? 0);
    const start = streamAt + "stream\n".length;
    const data = hasStream ? bytes.subarray(start, start + length) : undefined;
    objects.set(Number(found[1]), {
      head,
      stream: data === undefined || !head.includes("FlateDecode") ? data : inflateSync(data),
    });
  }
  const at = (id: string | undefined) => objects.get(Number(id));
  const mapOf = (fontId: string): ReadonlyMap<string, string> => {
    const map = new Map<string, string>();
    const toUnicode = /\/ToUnicode (\d+) 0 R/u.exec(at(fontId)?.head ?? "")?.[1];
    const text = at(toUnicode)?.stream?.toString("latin1") ?? "";
    const word = (hex: string) => Buffer.from(hex, "hex").swap16().toString("utf16le");
    for (const block of text.matchAll(/beginbfchar\n([^]*?)endbfchar/gu))
      for (const row of block[1]!.matchAll(/<(\w+)> <(\w+)>/gu)) map.set(row[1]!.toUpperCase(), word(row[2]!));
    for (const block of text.matchAll(/beginbfrange\n([^]*?)endbfrange/gu))
      for (const row of block[1]!.matchAll(/<(\w+)> <(\w+)> <(\w+)>/gu)) {
        const [low, high, to] = [parseInt(row[1]!, 16), parseInt(row[2]!, 16), parseInt(row[3]!, 16)];
        for (let code = low; code <= high; code++)
          map.set(code.toString(16).padStart(row[1]!.length, "0").toUpperCase(), String.fromCodePoint(to + code - low));
      }
    return map;
  };
  const pages = [...objects.values()].filter(({ head }) => /\/Type \/Page\b/u.test(head));
  return pages.map(({ head }) => {
    const fonts = new Map<string, ReadonlyMap<string, string>>();
    const inner = [...head.matchAll(/\/XObject <<([^>]*)>>/gu)].flatMap((m) => [...m[1]!.matchAll(/(\d+) 0 R/gu)]);
    const heads = [head, ...inner.map((m) => at(m[1])?.head ?? "")];
    for (const one of heads)
      for (const font of one.matchAll(/\/(F\d+) (\d+) 0 R/gu)) fonts.set(font[1]!, mapOf(font[2]!));
    const contents = /\/Contents (\d+) 0 R/u.exec(head)?.[1];
    let text = "";
    let font: ReadonlyMap<string, string> | undefined;
    const content = at(contents)?.stream?.toString("latin1") ?? "";
    for (const token of content.matchAll(/\/(F\d+) [\d.]+ Tf|<([0-9A-Fa-f]+)>|\((?:\\.|[^\\)])*\) Tj|BT/gu)) {
      if (token[0] === "BT") text += "\n";
      else if (token[1] !== undefined) font = fonts.get(token[1]);
      else if (token[2] !== undefined)
        text += (token[2].toUpperCase().match(/.{4}/gu) ?? []).map((code) => font?.get(code) ?? "").join("");
    }
    const box = /\/MediaBox \[([^\]]*)\]/u.exec(head)?.[1]?.trim().split(/\s+/u).map(Number) ?? [];
    return { text: text.normalize("NFKC"), widthPt: box[2] ?? 0, heightPt: box[3] ?? 0 };
  });
}
