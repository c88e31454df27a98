import { browserClock } from "./adapters/clock/browserClock.ts";
import { createBrowserRecogniser } from "./adapters/speech/browserRecogniser.ts";
import { factStoreInPage } from "./adapters/storage/indexedDbFactStore.ts";
import { builtInVoiceInPage } from "./adapters/voice/builtInVoice.ts";
import { compileGrammars } from "./app/compileGrammars.ts";
import { Conversation } from "./app/conversation.ts";
import { Session } from "./app/session.ts";
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

function run(root: HTMLElement): void {
  const grammars = compileGrammars(sources);
  // The build's own tests compile these files; a failure here means that the build was not tested.
  if (!grammars.ok) throw new Error(`grammar ${grammars.error.place.file}: ${grammars.error.message}`);
  const context = { protocol: defaultProtocol, grammars: grammars.value };
  const session = new Session({ context, store: factStoreInPage(), newCaseId: () => crypto.randomUUID() });
  const conversation = new Conversation({
    session,
    clock: browserClock,
    speaker: builtInVoiceInPage(new URL("voice/flite.wasm", document.baseURI).href),
    recogniser: createBrowserRecogniser(document.baseURI, { sources, dictionaryText }),
    onChange: (talk) => showView(viewScreen(context, session.state, talk, browserClock.nowMs())),
    onMeter: showMeter,
  });
  mountScreen(root, {
    typed: (text) => void conversation.typed(text),
    startListening: () => void conversation.listen(),
    stopListening: () => conversation.stopListening(),
    setMode: (mode) => conversation.setMode(mode),
    hold: (down) => conversation.hold(down),
  });
  void conversation.start().finally(() => void registerOffline());
}

const root = document.getElementById("root");
if (root !== null) run(root);
