import type { FileSaver } from "../../app/ports.ts";
import { fail, ok } from "../../core/result.ts";

/** How long the browser may take to fetch what it was told to download. */
const FETCHED_WITHIN_MS = 60_000;

/** Downloads of this browser: to where its user keeps them, or where it asks. */
export const fileSaverInPage = (): FileSaver => ({
  save: ({ name, type, text }) => {
    try {
      const url = URL.createObjectURL(new Blob([text], { type }));
      const link = document.createElement("a");
      link.href = url;
      link.download = name;
      link.click();
      setTimeout(() => URL.revokeObjectURL(url), FETCHED_WITHIN_MS);
      return ok(undefined);
    } catch (thrown) {
      return fail({ kind: "not-saved", detail: String(thrown) });
    }
  },
});
