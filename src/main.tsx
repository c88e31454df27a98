import { createBrowserClock } from "./adapters/clock/browserClock.ts";
import { createBrowserRecogniser } from "./adapters/speech/browserRecogniser.ts";
import { fetchLanguage, type Language } from "./adapters/files/fetchLanguage.ts";
import { mediaKeysInPage } from "./adapters/media/mediaKeys.ts";
import { printerInPage } from "./adapters/files/printInPage.ts";
import { fileSaverInPage } from "./adapters/files/saveFile.ts";
import { fetchSiteBytes } from "./adapters/files/fetchSiteFile.ts";
import { sha256HexHere, signaturesHere } from "./adapters/files/webCrypto.ts";
import { factStoreInPage } from "./adapters/storage/indexedDbFactStore.ts";
import { profileStoreInPage } from "./adapters/storage/profileStore.ts";
import { protocolStoreInPage } from "./adapters/storage/indexedDbProtocolStore.ts";
import { browserSpeechService, findBrowserEngine } from "./adapters/speech/speechService.ts";
import { createWebSpeechRecogniser } from "./adapters/speech/webSpeechRecogniser.ts";
import { builtInVoiceInPage } from "./adapters/voice/builtInVoice.ts";
import { deviceVoiceInPage, watchLocalVoices } from "./adapters/voice/deviceVoice.ts";
import { askForRoom } from "./adapters/storage/storageRoom.ts";
import { compileGrammars } from "./app/compileGrammars.ts";
import type { AppContext } from "./app/context.ts";
import { Conversation } from "./app/conversation.ts";
import { readExampleProtocol } from "./app/exampleProtocol.ts";
import { keepFacts } from "./app/keptFacts.ts";
import type { RecordActions } from "./app/recordDesk.ts";
import type { Recogniser, Speaker } from "./app/ports.ts";
import { clearedNotice, protocolNotice, roomNotice } from "./app/notices.ts";
import { markOf } from "./app/protocolFile.ts";
import { ProtocolChoice, type Choice, type FirstChoice } from "./app/protocolFileChoice.ts";
import type { ScreenActions } from "./app/screenView.ts";
import { Session } from "./app/session.ts";
import { changeSettings, firstSettings, type Settings, type SettingsInput } from "./app/settings.ts";
import type { TalkState } from "./app/talkState.ts";
import { viewScreen } from "./app/view/screen.ts";
import { CANNOT_START } from "./language/sentences/protocol.ts";
import type { Protocol } from "./protocol/protocol.ts";
import { loadSurely } from "./ui/loadSurely.ts";
import { mountFailure, mountScreen } from "./ui/mountScreen.tsx";
import { registerOffline } from "./ui/registerOffline.ts";
import { showEntries, showMeter, showProtocolPage, showRecord, showShelf, showView } from "./ui/screenStore.ts";
import dictionary from "../grammars/words.dict?url";
import exampleFile from "./protocol/defaultProtocol.json?url";

const grammars = import.meta.glob<string>("../grammars/*.jsgf", { query: "?url", import: "default", eager: true });

const LANGUAGE = "en-GB";
const browserClock = createBrowserClock();

/** The recogniser of the user's choice. The browser's own was agreed to where it sends sound away. */
function makeRecogniser(settings: Settings, language: Language): Recogniser {
  if (settings.engine === "built-in") return createBrowserRecogniser(document.baseURI, language);
  const audioMayLeaveDevice = settings.browserEngine === "sends-sound";
  return createWebSpeechRecogniser(browserSpeechService(), { lang: LANGUAGE, audioMayLeaveDevice });
}

const makeSpeaker = ({ voiceId }: Settings): Speaker =>
  voiceId === undefined
    ? builtInVoiceInPage(new URL("voice/flite.wasm", document.baseURI).href)
    : deviceVoiceInPage(voiceId);

/** Long, and read in quiet: not a part of the start. */
async function showProtocol({ protocol, mark }: AppContext, example: Protocol): Promise<void> {
  const { viewProtocol } = await loadSurely(() => import("./app/view/protocolPage.ts"));
  showProtocolPage(viewProtocol(protocol, example, mark));
}

type Parts = {
  readonly example: Protocol;
  readonly protocols: ProtocolChoice;
  readonly first: FirstChoice;
  readonly language: Language;
};

function run(root: HTMLElement, { example, protocols, first, language }: Parts): void {
  const grammars = compileGrammars(language.sources);
  // The build's own tests compile these files; a failure here means that the build was not tested.
  if (!grammars.ok) throw new Error(`grammar ${grammars.error.place.file}: ${grammars.error.message}`);
  const context = { protocol: first.loaded.protocol, mark: markOf(first.loaded), grammars: grammars.value };
  const store = factStoreInPage(sha256HexHere(), () => conversation.notice(clearedNotice));
  const kept = keepFacts(store);
  const session = new Session({ context, store: kept.store, newCaseId: () => crypto.randomUUID() });
  let desk: RecordActions | undefined;
  let settings = firstSettings;
  let shownContext: AppContext | undefined;
  const mediaKeys = mediaKeysInPage(new URL("silence.wav", document.baseURI).href, () => conversation.press());
  const show = (talk: TalkState): void => {
    mediaKeys.setActive(talk.mode === "held");
    const { context } = session;
    if (context !== shownContext) void showProtocol(context, example);
    shownContext = context;
    showView(viewScreen(context, session.state, talk, settings, browserClock.nowMs()));
    desk?.refreshEntries();
  };
  const conversation = new Conversation({
    session,
    clock: browserClock,
    speaker: makeSpeaker(settings),
    recogniser: makeRecogniser(settings, language),
    profiles: profileStoreInPage(),
    onChange: show,
    onMeter: showMeter,
  });
  const change = (input: SettingsInput): void => {
    const before = settings;
    settings = changeSettings(before, input);
    if (settings.engine !== before.engine) void conversation.replaceRecogniser(makeRecogniser(settings, language));
    if (settings.voiceId !== before.voiceId) void conversation.replaceSpeaker(makeSpeaker(settings));
  };
  const openDesk = async (): Promise<RecordActions> =>
    (await loadSurely(() => import("./app/recordDesk.ts"))).openRecordDesk({
      session,
      archive: store,
      kept,
      sha256Hex: sha256HexHere(),
      clock: browserClock,
      zone: Intl.DateTimeFormat().resolvedOptions().timeZone,
      saver: fileSaverInPage(),
      printer: printerInPage(),
      onRecord: showRecord,
      onShelf: showShelf,
      onEntries: showEntries,
    });
  const take = async (choosing: Promise<Choice>): Promise<void> => {
    const { loaded, notice } = await choosing;
    if (loaded !== undefined) await conversation.useProtocol(loaded);
    conversation.notice(protocolNotice(notice));
  };
  const actions: ScreenActions = {
    typed: (text) => void conversation.typed(text),
    startListening: () => void conversation.listen(),
    stopListening: () => conversation.stopListening(),
    setMode: (mode) => conversation.setMode(mode),
    hold: (down) => conversation.hold(down),
    chooseEngine: (engine) => change({ kind: "engine", engine }),
    answerConsent: (agreed) => change({ kind: "consent", agreed }),
    chooseVoice: (id) => change({ kind: "voice", id }),
    startHearMe: () => conversation.hearMe.start(),
    skipHearMe: () => conversation.hearMe.skip(),
    forgetVoice: () => void conversation.hearMe.forget(),
    loadProtocol: (files) => void take(protocols.choose(files)),
    forgetProtocol: () => void take(protocols.forget()),
    // The panel that these are of is there only once the desk is.
    printRecord: () => desk?.printRecord(),
    exportRecord: (kind) => desk?.exportRecord(kind),
    showEntries: (more) => desk?.showEntries(more),
    listCases: () => desk?.listCases(),
    chooseCase: (caseId) => desk?.chooseCase(caseId),
    addRecord: (file) => desk?.addRecord(file),
    eraseCase: (typed) => desk?.eraseCase(typed),
  };
  mountScreen(root, actions);
  if (first.notice !== undefined) conversation.notice(protocolNotice(first.notice, first.fault));
  void openDesk().then((opened) => (desk = opened));
  void conversation.start().finally(() => {
    void registerOffline();
    void askForRoom(navigator.storage).then((room) => conversation.notice(roomNotice(room)));
  });
  void findBrowserEngine(browserSpeechService(), LANGUAGE).then((found) => change({ kind: "browserEngine", found }));
  watchLocalVoices((voices) => change({ kind: "voices", voices }));
}

/** Fetches what the page cannot do without. Throws where something of it is missing or damaged. */
async function fetchParts(): Promise<Parts> {
  const [bytes, language] = await Promise.all([fetchSiteBytes(exampleFile), fetchLanguage({ grammars, dictionary })]);
  const example = readExampleProtocol(bytes);
  if (!example.ok) throw new Error(`${exampleFile}: ${example.error.join(" ")}`);
  const protocols = new ProtocolChoice(example.value, protocolStoreInPage(), signaturesHere());
  return { example: example.value, protocols, first: await protocols.start(), language };
}

const root = document.getElementById("root");
if (root !== null)
  fetchParts()
    .then((parts) => run(root, parts))
    .catch((error: unknown) => {
      mountFailure(root, CANNOT_START, error instanceof Error ? error.message : String(error));
    });
