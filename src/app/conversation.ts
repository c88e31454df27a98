import { grammarState } from "./context.ts";
import { toVoice } from "./announce.ts";
import { sayRecogniserError, showSpeakerError } from "./hearingWords.ts";
import type { Clock, GrammarState, HearingEvent, Recogniser, Speaker, Utterance } from "./ports.ts";
import type { LoadedProtocol, ProtocolNotice } from "./protocolFile.ts";
import type { HearingStatus, Meter, Outcome } from "./screenView.ts";
import type { Report, Session } from "./session.ts";
import { emptyVoiceQueue, queueVoice, type QueueItem, type VoiceInput } from "./voiceQueue.ts";

/** What the page shows beside the case itself. */
export type TalkState = {
  readonly hearing: HearingStatus;
  readonly hearingText: string;
  readonly mode: "open" | "held";
  readonly lastHeard: { readonly words: string; readonly outcome: Outcome } | undefined;
  readonly lastSpoken: string | undefined;
  readonly voiceText: string;
  readonly saveText: string;
  readonly saveFailed: boolean;
  /** What came of the last choice of a protocol file. */
  readonly protocolNotice: ProtocolNotice | undefined;
};

export type ConversationOptions = {
  readonly session: Session;
  readonly clock: Clock;
  readonly speaker: Speaker;
  readonly recogniser: Recogniser;
  readonly onChange: (talk: TalkState) => void;
  readonly onMeter: (meter: Meter) => void;
};

const TICK_MS = 500;

/** Joins the case to ears and mouth: what is heard goes in, what comes out is said, and neither disturbs the other. */
export class Conversation {
  #talk: TalkState = {
    hearing: "loading",
    hearingText: "Loading",
    mode: "open",
    lastHeard: undefined,
    lastSpoken: undefined,
    voiceText: "",
    saveText: "No entry yet",
    saveFailed: false,
    protocolNotice: undefined,
  };
  #queue = emptyVoiceQueue;
  #grammar: GrammarState = "open";
  #stopTicking: (() => void) | undefined;
  #recogniser: Recogniser;
  #speaker: Speaker;
  #unsubscribe: () => void;
  /** Facts wait for a write that works. */
  #unwritten = false;
  readonly #o: ConversationOptions;

  constructor(options: ConversationOptions) {
    this.#o = options;
    this.#speaker = options.speaker;
    this.#recogniser = options.recogniser;
    this.#unsubscribe = options.recogniser.onEvent((event) => this.#hearing(event));
  }

  /** Listens with another engine from now on; the old one is given up. */
  async replaceRecogniser(recogniser: Recogniser): Promise<void> {
    this.#unsubscribe();
    this.#recogniser.dispose();
    this.#recogniser = recogniser;
    this.#unsubscribe = recogniser.onEvent((event) => this.#hearing(event));
    recogniser.setMode(this.#talk.mode);
    recogniser.useGrammar(this.#grammar);
    recogniser.setSpeaking(this.#queue.speaking !== undefined);
    this.#voice({ kind: "userEnded" });
    await this.listen();
  }

  /** Speaks with another voice from now on; the old one is given up. */
  replaceSpeaker(speaker: Speaker): Promise<void> {
    this.#speaker.dispose();
    this.#speaker = speaker;
    return this.#warmUp();
  }

  /** Opens or resumes the case, then listens. Typed lines work from here on, whatever the microphone does. */
  async start(): Promise<void> {
    const { session, clock } = this.#o;
    const opened = await session.start(clock.nowMs());
    if (opened.kind === "saved") this.#update({ saveText: opened.resumed ? "Case resumed" : "Case opened" });
    else this.#report({ ...(await session.tick(clock.nowMs())), saved: opened });
    this.#stopTicking = clock.every(TICK_MS, () => void this.#tick());
    await this.listen();
    // Not before: loading the voice beside the listener would make both late, and the first words would be lost.
    if (opened.announcements.length > 0) this.#voice({ kind: "say", items: opened.announcements });
  }

  async listen(): Promise<void> {
    this.#update({ hearing: "loading", hearingText: "Loading" });
    const started = await this.#recogniser.start();
    if (!started.ok) this.#fault(sayRecogniserError(started.error));
    await this.#warmUp();
  }

  async #warmUp(): Promise<void> {
    const warm = await this.#speaker.warmUp();
    this.#update({ voiceText: warm.ok ? "" : showSpeakerError(warm.error) });
  }

  /** Another protocol counts from now on; it is said, with whatever is due under its targets. */
  async useProtocol(loaded: LoadedProtocol): Promise<void> {
    const { session, clock } = this.#o;
    this.#report(await session.useProtocol(loaded, clock.nowMs()));
  }

  /** Shows what came of a choice of protocol file; `fault` is said too. */
  noticeProtocol(protocolNotice: ProtocolNotice, fault?: string): void {
    this.#update({ protocolNotice });
    if (fault === undefined) return;
    this.#voice({ kind: "say", items: [{ text: fault, priority: "medium", alertId: "protocol-file" }] });
  }

  stopListening(): void {
    this.#recogniser.stop();
  }

  setMode(mode: "open" | "held"): void {
    this.#recogniser.setMode(mode);
    this.#update({ mode });
  }

  hold(down: boolean): void {
    this.#recogniser.hold(down);
  }

  typed(text: string): Promise<void> {
    const endedAtMs = this.#o.clock.nowMs();
    return this.#hear({ by: "typed", candidates: [{ words: text, score: 0 }], endedAtMs });
  }

  dispose(): void {
    this.#stopTicking?.();
    this.#recogniser.dispose();
    this.#speaker.dispose();
  }

  async #hear(utterance: Utterance): Promise<void> {
    const report = await this.#o.session.hear(utterance, this.#o.clock.nowMs());
    const { answer } = report;
    if (answer !== undefined) {
      this.#update({ lastHeard: { words: answer.words, outcome: answer.outcome } });
      if (answer.outcome === "refused") this.#speaker.mark("refused");
      else if (answer.outcome === "asked") this.#speaker.mark("asked");
      else if (answer.outcome !== "ignored") this.#speaker.mark("heard");
    }
    this.#report(report);
  }

  async #tick(): Promise<void> {
    this.#report(await this.#o.session.tick(this.#o.clock.nowMs()));
  }

  #report(report: Report): void {
    const before = this.#talk.saveFailed;
    if (report.saved.kind === "failed") {
      const unread = report.saved.error.kind === "corrupt";
      this.#unwritten = !unread;
      this.#update({ saveFailed: true, saveText: unread ? "Part of the record could not be read" : "Not saved" });
    } else if (report.facts.length > 0 || this.#unwritten) {
      this.#unwritten = false;
      this.#update({ saveFailed: false, saveText: "Saved" });
    }
    this.#useGrammar(grammarState(report.state.log));
    for (const input of toVoice(report, before)) this.#voice(input);
    this.#update({});
  }

  #useGrammar(state: GrammarState): void {
    if (state !== this.#grammar) this.#recogniser.useGrammar(state);
    this.#grammar = state;
  }

  #hearing(event: HearingEvent): void {
    switch (event.kind) {
      case "level":
        this.#o.onMeter({ levelDb: event.levelDb, noiseDb: event.noiseDb, inSpeech: event.inSpeech });
        return;
      case "listening":
      case "recovered":
        this.#voice({ kind: "withdraw", alertIds: ["listening"] });
        this.#update({ hearing: "listening", hearingText: "Listening" });
        return;
      case "stopped":
        // Whoever was talking is not heard any more: nothing may wait for the end of it.
        this.#voice({ kind: "userEnded" });
        this.#update({ hearing: "off", hearingText: "Not listening" });
        return;
      case "speechStarted":
        this.#voice({ kind: "userStarted" });
        return;
      case "speechEnded":
        this.#voice({ kind: "userEnded" });
        return;
      case "heard":
        void this.#hear(event.utterance);
        return;
      case "fault":
        this.#fault(sayRecogniserError(event.error));
    }
  }

  #fault(text: string): void {
    this.#update({ hearing: "fault", hearingText: text });
    this.#voice({ kind: "userEnded" });
    this.#voice({ kind: "say", items: [{ text, priority: "medium", alertId: "listening" }] });
  }

  #voice(input: VoiceInput): void {
    const [queue, effects] = queueVoice(this.#queue, input);
    this.#queue = queue;
    for (const effect of effects) {
      if (effect.kind === "silence") this.#speaker.cancel();
      else void this.#speak(effect.item);
    }
  }

  async #speak(item: QueueItem): Promise<void> {
    const speaker = this.#speaker;
    const tone = item.priority === "none" ? {} : { tone: item.priority };
    const brisk = item.withinMs === undefined ? {} : { withinMs: item.withinMs };
    const said = await speaker.say({ text: item.text, ...tone, ...brisk }, () => {
      this.#recogniser.setSpeaking(true);
      this.#update({ lastSpoken: item.text });
    });
    if (!said.ok) this.#update({ voiceText: showSpeakerError(said.error) });
    this.#voice({ kind: "ended", id: item.id });
    if (this.#queue.speaking === undefined) this.#recogniser.setSpeaking(false);
  }

  #update(change: Partial<TalkState>): void {
    this.#talk = { ...this.#talk, ...change };
    this.#o.onChange(this.#talk);
  }
}
