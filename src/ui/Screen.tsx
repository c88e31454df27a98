import { useStore } from "zustand";
import type { ScreenActions } from "../app/screenView.ts";
import { Page } from "./Page.tsx";
import { screenStore } from "./screenStore.ts";

/** The page bound to the store. */
export function Screen({ actions }: { readonly actions: ScreenActions }) {
  const view = useStore(screenStore, (state) => state.view);
  if (view === undefined) return <p className="opening">Opening the case…</p>;
  return <Page view={view} actions={actions} />;
}
