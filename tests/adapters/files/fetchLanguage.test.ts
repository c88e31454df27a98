import { afterEach, describe, expect, it, vi } from "vitest";
import { fetchLanguage } from "../../../src/adapters/files/fetchLanguage.ts";

const FILES: Readonly<Record<string, string>> = {
  "/a.jsgf": "grammar a;",
  "/b.jsgf": "grammar b;",
  "/w.dict": "one W AH N",
};
const GRAMMARS = { "../grammars/case.jsgf": "/a.jsgf", "../grammars/numbers.jsgf": "/b.jsgf" };

describe("fetching the language", () => {
  afterEach(() => vi.unstubAllGlobals());

  const serve = (): void => {
    const answer = (url: string) => new Response(FILES[url] ?? "not found", { status: url in FILES ? 200 : 404 });
    vi.stubGlobal("fetch", (url: string) => Promise.resolve(answer(url)));
  };

  it("gives each grammar its name, and the dictionary", async () => {
    serve();
    expect(await fetchLanguage({ grammars: GRAMMARS, dictionary: "/w.dict" })).toEqual({
      sources: { case: "grammar a;", numbers: "grammar b;" },
      dictionaryText: "one W AH N",
    });
  });

  it("fails where a file is missing: a page that came in its place is no grammar", async () => {
    serve();
    await expect(fetchLanguage({ grammars: GRAMMARS, dictionary: "/gone.dict" })).rejects.toThrow(
      "/gone.dict answered 404",
    );
  });
});
