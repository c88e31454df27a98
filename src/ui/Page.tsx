import type { ScreenActions, ScreenView } from "../app/screenView.ts";
import { AlertList } from "./AlertList.tsx";
import { CautionBanner } from "./CautionBanner.tsx";
import { ExchangePanel } from "./ExchangePanel.tsx";
import { HearingPanel } from "./HearingPanel.tsx";
import { NextStepPanel } from "./NextStepPanel.tsx";
import { PageFooter } from "./PageFooter.tsx";
import { PerfusionPanel } from "./PerfusionPanel.tsx";
import { PhraseList } from "./PhraseList.tsx";
import { ProgressList } from "./ProgressList.tsx";
import { QuestionPanel } from "./QuestionPanel.tsx";
import { SaveFault } from "./SaveFault.tsx";
import { SettingsPanel } from "./SettingsPanel.tsx";
import { TypedLine } from "./TypedLine.tsx";
import { ValueTiles } from "./ValueTiles.tsx";

type PageProps = { readonly view: ScreenView; readonly actions: ScreenActions };

/**
 * The whole page, in the order in which it is read aloud and on a narrow screen.
 * The style sheet sets the same parts side by side where there is room.
 */
export function Page({ view, actions }: PageProps) {
  return (
    <div className="page">
      <header className="page-top">
        <h1 className="name">Tragus</h1>
        <HearingPanel hearing={view.hearing} actions={actions} />
      </header>
      <CautionBanner caution={view.caution} working={view.lastHeard !== undefined} />
      <main className="parts">
        <div className="urgent">
          <SaveFault saveText={view.saveText} saveFailed={view.saveFailed} />
          <AlertList alerts={view.alerts} />
          <QuestionPanel question={view.question} />
        </div>
        <PerfusionPanel headline={view.headline} bar={view.bar} />
        <NextStepPanel nextStep={view.nextStep} progressText={view.progressText} />
        <ExchangePanel lastHeard={view.lastHeard} lastSpoken={view.lastSpoken} />
        <ValueTiles tiles={view.tiles} />
        <ProgressList groups={view.groups} />
        <PhraseList phrases={view.phrases} />
        <SettingsPanel settings={view.settings} actions={actions} />
      </main>
      <PageFooter caution={view.caution} protocolText={view.protocolText} saveText={view.saveText} />
      <TypedLine onSend={(text) => actions.typed(text)} />
    </div>
  );
}
