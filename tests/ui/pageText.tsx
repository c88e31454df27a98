import { renderToStaticMarkup } from "react-dom/server";
import type { ScreenActions, ScreenView } from "../../src/app/screenView.ts";
import { Page } from "../../src/ui/Page.tsx";

export const NO_ACTIONS: ScreenActions = {
  typed: () => undefined,
  startListening: () => undefined,
  stopListening: () => undefined,
  setMode: () => undefined,
  hold: () => undefined,
  chooseEngine: () => undefined,
  answerConsent: () => undefined,
  chooseVoice: () => undefined,
  startHearMe: () => undefined,
  skipHearMe: () => undefined,
  forgetVoice: () => undefined,
  loadProtocol: () => undefined,
  forgetProtocol: () => undefined,
  printRecord: () => undefined,
  exportRecord: () => undefined,
  showEntries: () => undefined,
  listCases: () => undefined,
  chooseCase: () => undefined,
  addRecord: () => undefined,
  eraseCase: () => undefined,
};

export const pageMarkup = (view: ScreenView): string => renderToStaticMarkup(<Page view={view} actions={NO_ACTIONS} />);

const ENTITIES: Readonly<Record<string, string>> = {
  "&amp;": "&",
  "&lt;": "<",
  "&gt;": ">",
  "&quot;": '"',
  "&#x27;": "'",
};

/** The markup as a reader meets it: no tags, but with the labels that stand for drawings. One space between pieces. */
export function readableText(markup: string): string {
  return markup
    .replace(/<[^>]*?aria-label="([^"]*)"[^>]*>/g, " $1 ")
    .replace(/<(?:span|\/span)[^>]*>/g, "")
    .replace(/<[^>]*>/g, " ")
    .replace(/&[^;\s]+;/g, (entity) => ENTITIES[entity] ?? entity)
    .replace(/\s+/g, " ");
}

export const pageText = (view: ScreenView): string => readableText(pageMarkup(view));
