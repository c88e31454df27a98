import { browserClock } from "./adapters/clock/browserClock.ts";
import { createBrowserRecogniser } from "./adapters/speech/browserRecogniser.ts";
import { factStoreInPage } from "./adapters/storage/indexedDbFactStore.ts";
import { browserSpeechService, findBrowserEngine } from "./adapters/speech/speechService.ts";
import { createWebSpeechRecogniser } from "./adapters/speech/webSpeechRecogniser.ts";
import { builtInVoiceInPage } from "./adapters/voice/builtInVoice.ts";
import { deviceVoiceInPage, watchLocalVoices } from "./adapters/voice/deviceVoice.ts";
import { compileGrammars } from "./app/compileGrammars.ts";
import { Conversation } from "./app/conversation.ts";
import type { Recogniser, Speaker } from "./app/ports.ts";
import { Session } from "./app/session.ts";
import { changeSettings, firstSettings, type Settings, type SettingsInput } from "./app/settings.ts";
import { viewScreen } from "./app/view/screen.ts";
import { defaultProtocol } from "./protocol/defaultProtocol.ts";
import { mountScreen } from "./ui/mountScreen.tsx";
import { registerOffline } from "./ui/registerOffline.ts";
import { showMeter, showView } from "./ui/screenStore.ts";
import dictionaryText from "../grammars/words.dict?raw";

const files = import.meta.glob<string>("../grammars/*.jsgf", { query: "?raw", import: "default", eager: true });
const sources = Object.fromEntries(
  Object.entries(files).map(([path, text]) => [path.replace(/^.*\/|\.jsgf$/g, ""), text]),
);

const LANGUAGE = "en-GB";

/** The recogniser of the user's choice. The browser's own was agreed to where it sends sound away. */
function makeRecogniser(settings: Settings): Recogniser {
  if (settings.engine === "built-in") return createBrowserRecogniser(document.baseURI, { sources, dictionaryText });
  const audioMayLeaveDevice = settings.browserEngine === "sends-sound";
  return createWebSpeechRecogniser(browserSpeechService(), { lang: LANGUAGE, audioMayLeaveDevice });
}

const makeSpeaker = ({ voiceId }: Settings): Speaker =>
  voiceId === undefined
    ? builtInVoiceInPage(new URL("voice/flite.wasm", document.baseURI).href)
    : deviceVoiceInPage(voiceId);

function run(root: HTMLElement): void {
  const grammars = compileGrammars(sources);
  // The build's own tests compile these files; a failure here means that the build was not tested.
  if (!grammars.ok) throw new Error(`grammar ${grammars.error.place.file}: ${grammars.error.message}`);
  const context = { protocol: defaultProtocol, grammars: grammars.value };
  const session = new Session({ context, store: factStoreInPage(), newCaseId: () => crypto.randomUUID() });
  let settings = firstSettings;
  const conversation = new Conversation({
    session,
    clock: browserClock,
    speaker: makeSpeaker(settings),
    recogniser: makeRecogniser(settings),
    onChange: (talk) => showView(viewScreen(context, session.state, talk, settings, browserClock.nowMs())),
    onMeter: showMeter,
  });
  const change = (input: SettingsInput): void => {
    const before = settings;
    settings = changeSettings(before, input);
    if (settings.engine !== before.engine) void conversation.replaceRecogniser(makeRecogniser(settings));
    if (settings.voiceId !== before.voiceId) void conversation.replaceSpeaker(makeSpeaker(settings));
  };
  mountScreen(root, {
    typed: (text) => void conversation.typed(text),
    startListening: () => void conversation.listen(),
    stopListening: () => conversation.stopListening(),
    setMode: (mode) => conversation.setMode(mode),
    hold: (down) => conversation.hold(down),
    chooseEngine: (engine) => change({ kind: "engine", engine }),
    answerConsent: (agreed) => change({ kind: "consent", agreed }),
    chooseVoice: (id) => change({ kind: "voice", id }),
  });
  void conversation.start().finally(() => void registerOffline());
  void findBrowserEngine(browserSpeechService(), LANGUAGE).then((found) => change({ kind: "browserEngine", found }));
  watchLocalVoices((voices) => change({ kind: "voices", voices }));
}

const root = document.getElementById("root");
if (root !== null) run(root);
