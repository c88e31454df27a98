import { browserClock } from "./adapters/clock/browserClock.ts";
import { createBrowserRecogniser } from "./adapters/speech/browserRecogniser.ts";
import { fetchLanguage, type Language } from "./adapters/files/fetchLanguage.ts";
import { mediaKeysInPage } from "./adapters/media/mediaKeys.ts";
import { signaturesHere } from "./adapters/files/webCrypto.ts";
import { factStoreInPage } from "./adapters/storage/indexedDbFactStore.ts";
import { profileStoreInPage } from "./adapters/storage/profileStore.ts";
import { protocolStoreInPage } from "./adapters/storage/indexedDbProtocolStore.ts";
import { browserSpeechService, findBrowserEngine } from "./adapters/speech/speechService.ts";
import { createWebSpeechRecogniser } from "./adapters/speech/webSpeechRecogniser.ts";
import { builtInVoiceInPage } from "./adapters/voice/builtInVoice.ts";
import { deviceVoiceInPage, watchLocalVoices } from "./adapters/voice/deviceVoice.ts";
import { compileGrammars } from "./app/compileGrammars.ts";
import type { AppContext } from "./app/context.ts";
import { Conversation } from "./app/conversation.ts";
import type { Recogniser, Speaker } from "./app/ports.ts";
import { markOf } from "./app/protocolFile.ts";
import { ProtocolChoice, type Choice, type FirstChoice } from "./app/protocolFileChoice.ts";
import type { ScreenActions } from "./app/screenView.ts";
import { Session } from "./app/session.ts";
import { changeSettings, firstSettings, type Settings, type SettingsInput } from "./app/settings.ts";
import type { TalkState } from "./app/talkState.ts";
import { viewProtocol } from "./app/view/protocolPage.ts";
import { viewScreen } from "./app/view/screen.ts";
import { defaultProtocol } from "./protocol/defaultProtocol.ts";
import { mountScreen } from "./ui/mountScreen.tsx";
import { registerOffline } from "./ui/registerOffline.ts";
import { showMeter, showProtocolPage, showView } from "./ui/screenStore.ts";
import dictionary from "../grammars/words.dict?url";

const grammars = import.meta.glob<string>("../grammars/*.jsgf", { query: "?url", import: "default", eager: true });

const LANGUAGE = "en-GB";

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

function run(root: HTMLElement, protocols: ProtocolChoice, first: FirstChoice, language: Language): void {
  const grammars = compileGrammars(language.sources);
  // The build's own tests compile these files; a failure here means that the build was not tested.
  if (!grammars.ok) throw new Error(`grammar ${grammars.error.place.file}: ${grammars.error.message}`);
  const context = { protocol: first.loaded.protocol, mark: markOf(first.loaded), grammars: grammars.value };
  const session = new Session({ context, store: factStoreInPage(), newCaseId: () => crypto.randomUUID() });
  let settings = firstSettings;
  let shownContext: AppContext | undefined;
  const mediaKeys = mediaKeysInPage(new URL("silence.wav", document.baseURI).href, () => conversation.press());
  const show = (talk: TalkState): void => {
    mediaKeys.setActive(talk.mode === "held");
    const { context } = session;
    if (context !== shownContext) showProtocolPage(viewProtocol(context.protocol, defaultProtocol, context.mark));
    shownContext = context;
    showView(viewScreen(context, session.state, talk, settings, browserClock.nowMs()));
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
  const take = async (choosing: Promise<Choice>): Promise<void> => {
    const { loaded, notice } = await choosing;
    if (loaded !== undefined) await conversation.useProtocol(loaded);
    conversation.noticeProtocol(notice);
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
  };
  mountScreen(root, actions);
  if (first.notice !== undefined) conversation.noticeProtocol(first.notice, first.fault);
  void conversation.start().finally(() => void registerOffline());
  void findBrowserEngine(browserSpeechService(), LANGUAGE).then((found) => change({ kind: "browserEngine", found }));
  watchLocalVoices((voices) => change({ kind: "voices", voices }));
}

const root = document.getElementById("root");
const protocols = new ProtocolChoice(protocolStoreInPage(), signaturesHere());
const ready = Promise.all([protocols.start(), fetchLanguage({ grammars, dictionary })]);
if (root !== null) void ready.then(([first, language]) => run(root, protocols, first, language));
