import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import type { ScreenActions } from "../app/screenView.ts";
import { Screen } from "./Screen.tsx";
import { StartFailure } from "./StartFailure.tsx";
import "./tokens.css";
import "./layout.css";
import "./panels.css";
import "./urgent.css";
import "./perfusion.css";
import "./drugs.css";
import "./controls.css";
import "./hearMe.css";
import "./protocol.css";
import "./protocolTable.css";
import "./protocolPrint.css";
import "./record.css";

/** Draws the page into `root`. It follows `screenStore` from then on. Call once. */
export function mountScreen(root: HTMLElement, actions: ScreenActions): void {
  createRoot(root).render(
    <StrictMode>
      <Screen actions={actions} />
    </StrictMode>,
  );
}

/** Draws instead of the page that there is none, and why. */
export function mountFailure(root: HTMLElement, text: string, detail: string): void {
  createRoot(root).render(<StartFailure text={text} detail={detail} />);
}
