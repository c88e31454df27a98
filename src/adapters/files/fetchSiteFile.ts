/** Fetches a file of the site. Throws where it is not to be had: a page that came in its place is not that file. */
export async function fetchSiteFile(url: string): Promise<Response> {
  const response = await fetch(url);
  if (!response.ok) throw new Error(`${url} answered ${response.status}`);
  return response;
}

/** The bytes of one, as they came. */
export const fetchSiteBytes = async (url: string): Promise<Uint8Array> =>
  new Uint8Array(await (await fetchSiteFile(url)).arrayBuffer());
