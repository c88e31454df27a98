import type { ScreenActions, ScreenView } from "../app/screenView.ts";

type HearMeProps = { readonly hearMe: ScreenView["hearMe"]; readonly actions: ScreenActions };

/** What was learnt of the voice on this device: begin, see, forget. */
export function HearMeSettings({ hearMe, actions }: HearMeProps) {
  const { profileText, notice, running } = hearMe;
  return (
    <fieldset className="hear-me-settings">
      <legend>Your voice</legend>
      <p className="hear-me-profile">{profileText === "" ? "Not measured on this device." : profileText}</p>
      <div className="hear-me-buttons">
        <button type="button" disabled={running !== undefined} onClick={() => actions.startHearMe()}>
          Hear me
        </button>
        <button type="button" disabled={profileText === "" && notice === ""} onClick={() => actions.forgetVoice()}>
          Forget my voice
        </button>
      </div>
      <p className="hear-me-notice" role="status">
        {notice}
      </p>
    </fieldset>
  );
}
