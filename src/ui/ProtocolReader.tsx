import { useStore } from "zustand";
import type { ScreenActions, ScreenView } from "../app/screenView.ts";
import { ProtocolPage } from "./ProtocolPage.tsx";
import { screenStore } from "./screenStore.ts";

type ReaderProps = { readonly notice: ScreenView["protocolNotice"]; readonly actions: ScreenActions };

/** The protocol page bound to the store: it changes only with the protocol, not with the case. */
export function ProtocolReader({ notice, actions }: ReaderProps) {
  const page = useStore(screenStore, (state) => state.protocolPage);
  return page === undefined ? null : <ProtocolPage page={page} notice={notice} actions={actions} />;
}
