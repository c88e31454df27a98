import type { HearMeView, ScreenActions, SettingsView } from "../app/screenView.ts";
import { HearMeSettings } from "./HearMeSettings.tsx";

type SettingsProps = {
  readonly settings: SettingsView;
  readonly hearMe: HearMeView;
  readonly actions: ScreenActions;
};

/** How to listen and with which voice to speak. Closed until it is wanted, but for a question that waits for its answer. */
export function SettingsPanel({ settings, hearMe, actions }: SettingsProps) {
  return (
    <details className="settings" open={settings.consent !== undefined || undefined}>
      <summary>Settings</summary>
      <fieldset>
        <legend>Listen with</legend>
        {settings.engines.map(({ id, label, chosen }) => (
          <label key={id} className="choice">
            <input type="radio" name="engine" checked={chosen} onChange={() => actions.chooseEngine(id)} />
            <span>{label}</span>
          </label>
        ))}
      </fieldset>
      {settings.consent !== undefined && (
        <div role="alertdialog" aria-label="Before sound leaves the device" className="consent">
          <p>{settings.consent}</p>
          <button type="button" onClick={() => actions.answerConsent(true)}>
            Use it
          </button>
          <button type="button" onClick={() => actions.answerConsent(false)}>
            Stay on the device
          </button>
        </div>
      )}
      <fieldset>
        <legend>Speak with</legend>
        {settings.voices.map(({ id, label, chosen }) => (
          <label key={id ?? "built-in"} className="choice">
            <input type="radio" name="voice" checked={chosen} onChange={() => actions.chooseVoice(id)} />
            <span>{label}</span>
          </label>
        ))}
      </fieldset>
      <HearMeSettings hearMe={hearMe} actions={actions} />
    </details>
  );
}
