import { fail, ok, type Result } from "../core/result.ts";
import type { ChosenFile } from "./protocolFile.ts";
import { utf8Text } from "./protocolFileBytes.ts";
import { isKeyFile, signatureBytes } from "./protocolFileSignature.ts";

/** Files that were picked together, by what is in them. Either a protocol or a key is there. */
export type SortedFiles = {
  readonly protocol?: ChosenFile;
  readonly signature?: Uint8Array;
  /** PEM. */
  readonly trustedKey?: string;
};

type Kind = "protocol" | "signature" | "key";

function kindOf({ name, bytes }: ChosenFile): Kind | undefined {
  const text = utf8Text(bytes) ?? "";
  if (isKeyFile(text)) return "key";
  if (/^\s*[{[]/u.test(text) || /\.json$/iu.test(name)) return "protocol";
  return signatureBytes(bytes) === undefined && !/\.sig$/iu.test(name) ? undefined : "signature";
}

/**
 * Says which file is which: by content, and where that does not tell, by the end of the name.
 *
 * Errors: one sentence: a file of no known kind, two of a kind, a signature without its file, or nothing at all.
 */
export function sortFiles(files: readonly ChosenFile[]): Result<SortedFiles, string> {
  const found = new Map<Kind, ChosenFile>();
  for (const file of files) {
    const kind = kindOf(file);
    if (kind === undefined)
      return fail(`${file.name} is neither a protocol file nor a signature nor a public key in PEM.`);
    const other = found.get(kind);
    if (other !== undefined) return fail(`${other.name} and ${file.name} are both a ${kind}: choose one of them.`);
    found.set(kind, file);
  }
  const protocol = found.get("protocol");
  const signature = found.get("signature");
  const key = found.get("key");
  if (protocol === undefined && signature !== undefined)
    return fail(`${signature.name} is a signature: choose the protocol file that it belongs to with it.`);
  if (protocol === undefined && key === undefined) return fail("No file was chosen.");
  return ok({
    ...(protocol === undefined ? {} : { protocol }),
    ...(signature === undefined ? {} : { signature: signature.bytes }),
    ...(key === undefined ? {} : { trustedKey: utf8Text(key.bytes) ?? "" }),
  });
}
