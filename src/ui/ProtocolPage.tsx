import { memo, useEffect, useRef, useState } from "react";
import type { ScreenActions, ScreenView } from "../app/screenView.ts";
import { onlyDiffering } from "../app/view/protocolPageFilter.ts";
import type { ProtocolPageView } from "../app/view/protocolPageTypes.ts";
import { ProtocolFiles } from "./ProtocolFiles.tsx";
import { ProtocolSections } from "./ProtocolSections.tsx";
import { ProtocolWarning } from "./ProtocolWarning.tsx";

type ProtocolProps = {
  readonly page: ProtocolPageView;
  readonly notice: ScreenView["protocolNotice"];
  readonly actions: ScreenActions;
};

/** The protocol that counts, to be read. Drawn anew only when it changes: the case beside it redraws twice a second. */
export const ProtocolPage = memo(function ProtocolPage({ page, notice, actions }: ProtocolProps) {
  const [filtered, setFiltered] = useState(false);
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    window.scrollTo(0, 0);
    heading.current?.focus({ preventScroll: true });
  }, []);
  return (
    <article className="protocol-page" aria-labelledby="protocol-heading">
      <h2 id="protocol-heading" ref={heading} tabIndex={-1}>
        Protocol: {page.name}
      </h2>
      <ProtocolWarning text={page.warning} />
      <dl className="protocol-identity">
        <dt>SHA-256</dt>
        <dd className="protocol-hash">{page.hashText}</dd>
        <dt>Signature</dt>
        <dd>{page.signatureText}</dd>
      </dl>
      <ProtocolFiles notice={notice} actions={actions} />
      <p className="protocol-count" role="status">
        {page.differingText}
      </p>
      <label className="choice">
        <input type="checkbox" checked={filtered} onChange={(event) => setFiltered(event.target.checked)} />
        <span>Show only what differs</span>
      </label>
      <ProtocolSections sections={filtered ? onlyDiffering(page.sections) : page.sections} />
    </article>
  );
});
