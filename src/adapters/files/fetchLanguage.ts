import { fetchSiteFile } from "./fetchSiteFile.ts";

/** Addresses of the grammar files, by the path they have in the project, and of the dictionary. */
export type LanguageFiles = { readonly grammars: Readonly<Record<string, string>>; readonly dictionary: string };

export type Language = { readonly sources: Readonly<Record<string, string>>; readonly dictionaryText: string };

const readText = async (url: string): Promise<string> => (await fetchSiteFile(url)).text();

const fileName = (path: string): string => path.replace(/^.*\/|\.jsgf$/g, "");

/**
 * Fetches what may be said: grammar texts by file name without ".jsgf", and the pronunciations of all their words. They are
 * files of the site beside the code, stored with it for use without a network. Throws where one is not to be had: nothing
 * can be understood then.
 */
export async function fetchLanguage({ grammars, dictionary }: LanguageFiles): Promise<Language> {
  const texts = Promise.all(
    Object.entries(grammars).map(async ([path, url]) => [fileName(path), await readText(url)] as const),
  );
  const [sources, dictionaryText] = await Promise.all([texts, readText(dictionary)]);
  return { sources: Object.fromEntries(sources), dictionaryText };
}
