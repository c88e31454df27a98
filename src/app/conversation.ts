import { toVoice } from "./announce.ts";
import type { ConversationOptions } from "./conversationOptions.ts";
import { FIRST_EARS, stepEars, type EarsEffect, type EarsInput } from "./ears.ts";
import { HearMeDialogue, type HearMeTalk } from "./hearMeDialogue.ts";
import { HEAR_ME_GRAMMAR } from "./hearMeLine.ts";
import { HEARING_AGAIN, sayRecogniserError, TOO_LOUD } from "./hearingWords.ts";
import type { GrammarState, HearingEvent, ListeningMode, Recogniser, Speaker, Utterance } from "./ports.ts";
import { Mouth } from "./mouth.ts";
import type { LoadedProtocol, ProtocolNotice } from "./protocolFile.ts";
import type { Report } from "./session.ts";
import { FIRST_TALK, markFor, showEars, type TalkState } from "./talkState.ts";

const TICK_MS = 500;

/** Joins the case to ears and mouth: what is heard goes in, what comes out is said, and neither disturbs the other. */
export class Conversation {
  #talk = FIRST_TALK;
  #ears = FIRST_EARS;
  #grammar: GrammarState = "open";
  #stopTicking: (() => void) | undefined;
  #recogniser: Recogniser;
  readonly #mouth: Mouth;
  readonly hearMe: HearMeDialogue;
  #unsubscribe: () => void;
  /** Facts wait for a write that works. */
  #unwritten = false;
  readonly #o: ConversationOptions;

  constructor(options: ConversationOptions) {
    this.#o = options;
    this.#mouth = new Mouth(options.speaker, {
      onSounding: (sounding) => this.#sound(sounding),
      onSaying: (lastSpoken) => this.#update({ lastSpoken }),
      onState: (voiceText) => this.#update({ voiceText }),
    });
    const onChange = (hearMe: HearMeTalk): void => this.#learn(hearMe);
    this.hearMe = new HearMeDialogue({ ...options, mouth: this.#mouth, onChange });
    this.#recogniser = options.recogniser;
    this.#unsubscribe = options.recogniser.onEvent((event) => this.#hearing(event));
  }

  /** Listens with another engine from now on; the old one is given up. */
  async replaceRecogniser(recogniser: Recogniser): Promise<void> {
    this.#unsubscribe();
    this.#recogniser.dispose();
    this.#recogniser = recogniser;
    this.#unsubscribe = recogniser.onEvent((event) => this.#hearing(event));
    recogniser.setMode(this.#ears.mode);
    recogniser.useGrammar(this.#grammar);
    recogniser.setSpeaking(this.#mouth.isSpeaking);
    this.#mouth.tell({ kind: "userEnded" });
    this.#listen({ kind: "stopped" });
    await this.listen();
  }

  /** Speaks with another voice from now on; the old one is given up. */
  replaceSpeaker(speaker: Speaker): Promise<void> {
    return this.#mouth.replace(speaker);
  }

  /** Opens or resumes the case, then listens. Typed lines work from here on, whatever the microphone does. */
  async start(): Promise<void> {
    const { session, clock } = this.#o;
    const opened = await session.start(clock.nowMs());
    if (opened.kind === "saved") this.#update({ saveText: opened.resumed ? "Case resumed" : "Case opened" });
    else this.#report({ ...(await session.tick(clock.nowMs())), saved: opened });
    this.#stopTicking = clock.every(TICK_MS, () => void this.#tick());
    void this.hearMe.load();
    await this.listen();
    // Not before: loading the voice beside the listener would make both late, and the first words would be lost.
    if (opened.announcements.length > 0) this.#mouth.tell({ kind: "say", items: opened.announcements });
  }

  async listen(): Promise<void> {
    this.#update({ hearing: "loading", hearingText: "Loading" });
    const started = await this.#recogniser.start();
    if (!started.ok) this.#fault(sayRecogniserError(started.error));
    await this.#mouth.warmUp();
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
    this.#mouth.tell({ kind: "say", items: [{ text: fault, priority: "medium", alertId: "protocol-file" }] });
  }

  stopListening(): void {
    this.#recogniser.stop();
  }

  setMode(mode: ListeningMode): void {
    this.#recogniser.setMode(mode);
    this.#listen({ kind: "mode", mode });
  }

  hold(down: boolean): void {
    this.#listen({ kind: "hold", down });
  }

  /** A key that gives no sign of its release: once to begin a held utterance, once to end it. */
  press(): void {
    this.#listen({ kind: "press", atMs: this.#o.clock.nowMs() });
  }

  typed(text: string): Promise<void> {
    const endedAtMs = this.#o.clock.nowMs();
    return this.#hear({ by: "typed", candidates: [{ words: text, score: 0 }], endedAtMs });
  }

  dispose(): void {
    this.#stopTicking?.();
    this.#recogniser.dispose();
    this.#mouth.dispose();
  }

  #listen(input: EarsInput): void {
    const [ears, effects] = stepEars(this.#ears, input);
    const isSame = ears.mode === this.#ears.mode && ears.holding === this.#ears.holding;
    this.#ears = ears;
    for (const effect of effects) this.#carryOut(effect);
    if (!isSame || effects.length > 0 || input.kind === "stopped") this.#update({});
  }

  #carryOut(effect: EarsEffect): void {
    switch (effect.kind) {
      case "take":
        void this.#hear(effect.utterance);
        return;
      case "attend":
        this.#mouth.mark("called");
        return;
      case "hold":
        this.#recogniser.hold(effect.down);
        return;
      case "loudness":
        this.#mouth.tell({ kind: "say", items: [effect.tooLoud ? TOO_LOUD : HEARING_AGAIN] });
    }
  }

  async #hear(utterance: Utterance): Promise<void> {
    const forHearMe = this.hearMe.take(utterance);
    if (forHearMe !== undefined) return this.#update({ lastHeard: forHearMe });
    const atMs = this.#o.clock.nowMs();
    const report = await this.#o.session.hear(utterance, atMs);
    const { answer } = report;
    if (answer !== undefined) {
      const waits = report.state.log.questions.length > 0;
      this.#listen({ kind: "answered", utterance, outcome: answer.outcome, waits, atMs });
      this.#update({ lastHeard: { words: answer.words, outcome: answer.outcome } });
      const mark = markFor(answer.outcome);
      if (mark !== undefined) this.#mouth.mark(mark);
    }
    this.#report(report);
  }

  async #tick(): Promise<void> {
    this.#listen({ kind: "tick", atMs: this.#o.clock.nowMs() });
    this.hearMe.tick();
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
    if (report.announcements.some(({ priority }) => priority === "high")) this.hearMe.interrupt();
    this.#useGrammar();
    for (const input of toVoice(report, before)) this.#mouth.tell(input);
    this.#update({});
  }

  #useGrammar(): void {
    const state = this.hearMe.isRunning ? HEAR_ME_GRAMMAR : this.#o.session.grammar;
    if (state !== this.#grammar) this.#recogniser.useGrammar(state);
    this.#grammar = state;
  }

  #hearing(event: HearingEvent): void {
    switch (event.kind) {
      case "level":
        this.#o.onMeter({ levelDb: event.levelDb, noiseDb: event.noiseDb, inSpeech: event.inSpeech });
        this.#listen({ kind: "level", noiseDb: event.noiseDb, atMs: this.#o.clock.nowMs() });
        return;
      case "listening":
      case "recovered":
        this.#mouth.tell({ kind: "withdraw", alertIds: ["listening"] });
        this.#update({ hearing: "listening", hearingText: "Listening" });
        return;
      case "stopped":
        // Whoever was talking is not heard any more: nothing may wait for the end of it.
        this.#mouth.tell({ kind: "userEnded" });
        this.#listen({ kind: "stopped" });
        this.#mouth.tell({ kind: "withdraw", alertIds: [TOO_LOUD.alertId] });
        this.#update({ hearing: "off", hearingText: "Not listening" });
        return;
      case "speechStarted":
        this.#mouth.tell({ kind: "userStarted" });
        return;
      case "speechEnded":
        this.#mouth.tell({ kind: "userEnded" });
        return;
      case "heard":
        // A line of "hear me" is asked for: it needs no call word.
        if (this.hearMe.isRunning) void this.#hear(event.utterance);
        else this.#listen({ kind: "heard", utterance: event.utterance });
        return;
      case "fault":
        this.#fault(sayRecogniserError(event.error));
    }
  }

  #fault(text: string): void {
    this.#update({ hearing: "fault", hearingText: text });
    this.#mouth.tell({ kind: "userEnded" });
    this.#mouth.tell({ kind: "say", items: [{ text, priority: "medium", alertId: "listening" }] });
  }

  /** Our own voice sounds from now on, or is silent. */
  #sound(sounding: boolean): void {
    this.#recogniser.setSpeaking(sounding);
    if (!sounding) this.hearMe.voiceEnded();
    const waits = this.#grammar.startsWith("asked");
    this.#listen({ kind: "ownVoice", sounding, waits, atMs: this.#o.clock.nowMs() });
  }

  #learn(hearMe: HearMeTalk): void {
    this.#useGrammar();
    this.#listen({ kind: "enrolled", profile: hearMe.profile });
    this.#update({ hearMe });
  }

  #update(change: Partial<TalkState>): void {
    this.#talk = { ...this.#talk, ...change, ...showEars(this.#ears, this.#o.clock.nowMs()) };
    this.#o.onChange(this.#talk);
  }
}
