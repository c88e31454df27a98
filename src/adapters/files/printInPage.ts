import type { Printer } from "../../app/ports.ts";

/** The one style of the document. It is taken out before anything is parsed: the policy of the page would refuse it aloud. */
const STYLE = /<style>(.*?)<\/style>/su;

/**
 * Prints a document in place of this page. The page takes the document into itself for as long as it is printed, since that
 * serves the browser's own print too and needs no window; `src/ui/record.css` hides the rest. The style of the document
 * comes as a constructed sheet: the content security policy of the page lets no inline style through.
 */
export function printerInPage(): Printer {
  let put: { readonly body: readonly Element[]; readonly sheet: CSSStyleSheet } | undefined;
  const takeOut = (): void => {
    put?.body.forEach((element) => element.remove());
    document.adoptedStyleSheets = document.adoptedStyleSheets.filter((sheet) => sheet !== put?.sheet);
    put = undefined;
  };
  const putIn = (html: string): void => {
    takeOut();
    const sheet = new CSSStyleSheet();
    const bare = html.replace(STYLE, (_element, css: string) => {
      sheet.replaceSync(css);
      return "";
    });
    const parsed = new DOMParser().parseFromString(bare, "text/html");
    put = { body: [...parsed.body.children], sheet };
    document.body.append(...put.body);
    document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
  };
  return {
    onPrint: (make) => {
      addEventListener("beforeprint", () => {
        const html = make();
        if (html !== undefined) putIn(html);
      });
      addEventListener("afterprint", takeOut);
    },
    print: () => window.print(),
  };
}
