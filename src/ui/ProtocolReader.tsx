import { lazy, Suspense } from "react";
import { useStore } from "zustand";
import type { ScreenActions, ScreenView } from "../app/screenView.ts";
import { loadSurely } from "./loadSurely.ts";
import { screenStore } from "./screenStore.ts";

type ReaderProps = { readonly notice: ScreenView["protocolNotice"]; readonly actions: ScreenActions };

/** Long, and read in quiet: not a part of the start. */
const ProtocolPage = lazy(async () => {
  const loaded = await loadSurely(() => import("./ProtocolPage.tsx"));
  return { default: loaded.ProtocolPage };
});

/** The protocol page bound to the store: it changes only with the protocol, not with the case. */
export function ProtocolReader({ notice, actions }: ReaderProps) {
  const page = useStore(screenStore, (state) => state.protocolPage);
  if (page === undefined) return null;
  return (
    <Suspense>
      <ProtocolPage page={page} notice={notice} actions={actions} />
    </Suspense>
  );
}
