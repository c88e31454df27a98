import type { ScreenView } from "../app/screenView.ts";
import { ShapeMark } from "./ShapeMark.tsx";

/** A record that is not being kept stands among the alerts, not in the small print. */
export function SaveFault({ saveText, saveFailed }: Pick<ScreenView, "saveText" | "saveFailed">) {
  return (
    <div className="save-fault" aria-live="assertive">
      {saveFailed && (
        <p className="alert alert-high">
          <ShapeMark shape="cross" />
          <span className="alert-text">{saveText}</span>
        </p>
      )}
    </div>
  );
}
