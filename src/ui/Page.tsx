import type { ScreenActions, ScreenView } from "../app/screenView.ts";
import { AlertList } from "./AlertList.tsx";
import { CautionBanner } from "./CautionBanner.tsx";
import { ClocksPanel } from "./ClocksPanel.tsx";
import { DrugPanel } from "./DrugPanel.tsx";
import { EntriesPanel } from "./EntriesPanel.tsx";
import { ExchangePanel } from "./ExchangePanel.tsx";
import { HearMePanel } from "./HearMePanel.tsx";
import { HandoverPanel } from "./HandoverPanel.tsx";
import { HearingPanel } from "./HearingPanel.tsx";
import { NextStepPanel } from "./NextStepPanel.tsx";
import { PageFooter } from "./PageFooter.tsx";
import { PerfusionPanel } from "./PerfusionPanel.tsx";
import { PhraseList } from "./PhraseList.tsx";
import { ProgressList } from "./ProgressList.tsx";
import { ProtocolReader } from "./ProtocolReader.tsx";
import { ProtocolWarning } from "./ProtocolWarning.tsx";
import { QuestionPanel } from "./QuestionPanel.tsx";
import { RecordPanel } from "./RecordPanel.tsx";
import { SaveFault } from "./SaveFault.tsx";
import { SettingsPanel } from "./SettingsPanel.tsx";
import { TypedLine } from "./TypedLine.tsx";
import { useReading } from "./useReading.ts";
import { ValueTiles } from "./ValueTiles.tsx";
import { WhyPanel } from "./WhyPanel.tsx";

type PageProps = { readonly view: ScreenView; readonly actions: ScreenActions };

function CaseParts({ view, actions }: PageProps) {
  return (
    <>
      <PerfusionPanel headline={view.headline} bar={view.bar} targetLines={view.targetLines} />
      <NextStepPanel nextStep={view.nextStep} progressText={view.progressText} />
      <ClocksPanel phaseText={view.phaseText} attemptText={view.attemptText} clocks={view.clocks} />
      <ExchangePanel lastHeard={view.lastHeard} lastSpoken={view.lastSpoken} />
      {view.handover.length > 0 && <HandoverPanel handover={view.handover} />}
      {view.why !== undefined && <WhyPanel why={view.why} />}
      <ValueTiles tiles={view.tiles} />
      <DrugPanel drugs={view.drugs} />
      <EntriesPanel actions={actions} />
      <ProgressList listTitle={view.listTitle} groups={view.groups} />
      <PhraseList phrases={view.phrases} />
      <RecordPanel actions={actions} />
      <SettingsPanel settings={view.settings} hearMe={view.hearMe} actions={actions} />
    </>
  );
}

/**
 * The whole page, in the order in which it is read aloud and on a narrow screen.
 * The style sheet sets the same parts side by side where there is room. While the protocol is read the case goes on:
 * alerts and questions stay on top,
 * with what was heard below them.
 */
export function Page({ view, actions }: PageProps) {
  const { reading, opener, open, close } = useReading();
  return (
    <div className={reading ? "page page-reading" : "page"}>
      <header className="page-top">
        <h1 className="name">Tragus</h1>
        {view.isRehearsal && <ProtocolWarning text={view.caseText} />}
        <HearingPanel hearing={view.hearing} actions={actions} />
        <ProtocolWarning text={view.protocolWarning} />
      </header>
      <CautionBanner caution={view.caution} working={view.lastHeard !== undefined} />
      <main className="parts">
        <div className="urgent">
          {reading && (
            <button type="button" className="back" onClick={close}>
              Back to the case
            </button>
          )}
          <SaveFault saveText={view.saveText} saveFailed={view.saveFailed} />
          <AlertList alerts={view.alerts} />
          <QuestionPanel question={view.question} />
          {view.hearMe.running !== undefined && <HearMePanel running={view.hearMe.running} actions={actions} />}
        </div>
        {reading ? (
          <>
            <ExchangePanel lastHeard={view.lastHeard} lastSpoken={view.lastSpoken} />
            <ProtocolReader notice={view.protocolNotice} actions={actions} />
          </>
        ) : (
          <CaseParts view={view} actions={actions} />
        )}
      </main>
      <PageFooter
        caution={view.caution}
        protocolText={view.protocolText}
        caseText={view.caseText}
        saveText={view.saveText}
        roomText={view.roomText}
        opener={opener}
        onProtocol={open}
      />
      <TypedLine onSend={(text) => actions.typed(text)} />
    </div>
  );
}
