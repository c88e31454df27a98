import { sayProtocolStatus } from "../../language/sentences/protocol.ts";
import type { ProtocolMark } from "../../log/facts.ts";
import type { Protocol } from "../../protocol/protocol.ts";
import { compareSections } from "./protocolPageDifference.ts";
import { draftSections } from "./protocolPageSections.ts";
import type { ProtocolPageView } from "./protocolPageTypes.ts";

function showDiffering(count: number): string {
  if (count === 0) return "Nothing differs from the bundled example.";
  return count === 1
    ? "1 entry differs from the bundled example."
    : `${count} entries differ from the bundled example.`;
}

/**
 * The protocol that counts as a page to read: every value of the file with its source, held against the bundled one.
 *
 * @param active  the protocol that counts.
 * @param bundled the protocol that comes with the app.
 * @param mark    how the record names the active one.
 */
export function viewProtocol(active: Protocol, bundled: Protocol, mark: ProtocolMark): ProtocolPageView {
  const sections = compareSections(draftSections(active), draftSections(bundled));
  const rows = sections.flatMap((section) => section.tables.flatMap((table) => table.rows));
  const differing = rows.filter(({ difference }) => difference !== "none").length;
  return {
    name: active.name,
    warning: sayProtocolStatus(active),
    hashText: mark.hash ?? "not known: this browser cannot work it out",
    signatureText: mark.signedBy === undefined ? "Not signed" : `Signed by key ${mark.signedBy}`,
    sections,
    differing,
    differingText: showDiffering(differing),
  };
}
