import type { ProtocolMark } from "../../log/facts.ts";
import { protocolStatus } from "../../log/protocolStatus.ts";
import { sentences } from "./sentence.ts";

type Named = { readonly name: string; readonly version: string };
type Standing = { readonly status: "example" | "approved" };

/** Said once at the start of a case; nothing to be said of an approved protocol. */
export const sayProtocolStatus = ({ status }: Standing): string => protocolStatus(status);

/** Answers "which protocol": whose it is, approved or not, signed or not. */
export const sayWhichProtocol = ({ name, version, status }: Named & Standing, { signedBy }: ProtocolMark): string =>
  sentences(
    `${name}, version ${version}`,
    sayProtocolStatus({ status }),
    signedBy === undefined ? "Not signed" : "Signed by the key you trust",
  );

/** Said when another protocol counts from now on. */
export const sayProtocolReplaced = ({ name, version, status }: Named & Standing): string =>
  sentences(`protocol now ${name}, version ${version}`, sayProtocolStatus({ status }));

/** Said at the start when the chosen file, stored on the device, is no longer any good. */
export const PROTOCOL_NOT_USED = "The stored protocol cannot be used. The bundled example counts instead.";

/** Shown in place of everything else where a file of the app is missing or damaged. */
export const CANNOT_START =
  "Tragus cannot start: a file that it needs is missing or damaged. Nothing is heard, watched or recorded. Reload the page.";

/** Enough of the hash to compare two devices by eye. */
const SHOWN_DIGITS = 16;

/** The protocol in one line for the screen: whose it is, of which day, approved or not, and its hash and signature. */
export function showProtocolMark(
  { name, version, date, owner, status }: Named & Standing & { readonly date: string; readonly owner: string },
  { hash, signedBy }: ProtocolMark,
): string {
  return sentences(
    `Protocol: ${name}, version ${version}, ${date}, ${owner}`,
    sayProtocolStatus({ status }),
    hash === undefined ? undefined : `SHA-256 begins ${hash.slice(0, SHOWN_DIGITS)}`,
    signedBy === undefined ? "Not signed" : `Signed by key ${signedBy}`,
  );
}
