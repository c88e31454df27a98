import type { RefObject } from "react";
import { useStore } from "zustand";
import type { ScreenView } from "../app/screenView.ts";
import type { OfflineState } from "./screenStore.ts";
import { screenStore } from "./screenStore.ts";

const OFFLINE_TEXTS: Record<OfflineState, string> = {
  unknown: "",
  ready: "Ready to work without a network.",
  updateWaiting: "A newer version is waiting; it starts when every Tragus window has been closed and opened again.",
  failed: "Not yet stored on this device: it needs the network to start.",
};

type FooterProps = Pick<ScreenView, "caution" | "protocolText" | "caseText" | "saveText" | "roomText"> & {
  readonly opener: RefObject<HTMLButtonElement | null>;
  readonly onProtocol: () => void;
};

/** Whose numbers these are, whether the record is safe, and the cautions. */
export function PageFooter({ caution, protocolText, caseText, saveText, roomText, opener, onProtocol }: FooterProps) {
  const offlineText = useStore(screenStore, (state) => OFFLINE_TEXTS[state.offline]);
  return (
    <footer className="page-foot">
      <button type="button" className="protocol-open" ref={opener} onClick={onProtocol}>
        Protocol
      </button>
      <p className="case">{caseText}</p>
      <p className="save">{saveText}</p>
      {roomText !== "" && <p className="room">{roomText}</p>}
      <p className="protocol">{protocolText}</p>
      {offlineText !== "" && <p className="offline">{offlineText}</p>}
      <p className="caution-line">{caution}</p>
    </footer>
  );
}
