import { toVoice } from "./announce.ts";
import type { ConversationOptions } from "./conversationOptions.ts";
import { caseVoice } from "./caseVoice.ts";
import { microphoneFault } from "./deviceFault.ts";
import type { EarsEffect } from "./ears.ts";
import { Hearer } from "./hearer.ts";
import { HearMeDialogue, type HearMeTalk } from "./hearMeDialogue.ts";
import { HEAR_ME_GRAMMAR } from "./hearMeLine.ts";
import { HEARING_AGAIN, sayRecogniserError, TOO_LOUD } from "./hearingWords.ts";
import type { HearingEvent, ListeningMode, Recogniser, RecogniserError, Speaker, Utterance } from "./ports.ts";
import type { Mouth } from "./mouth.ts";
import type { Notice } from "./notices.ts";
import type { LoadedProtocol } from "./protocolFile.ts";
import { savingAfter, shownOutcome } from "./saving.ts";
import type { Report } from "./session.ts";
import { FIRST_TALK, NOTHING_YET, markFor, showEars, type TalkState } from "./talkState.ts";
import { UserTurn } from "./userTurn.ts";

const TICK_MS = 500;

/** Joins the case to ears and mouth: what is heard goes in, what comes out is said, and neither disturbs the other. */
export class Conversation {
  #talk = FIRST_TALK;
  #stopTicking: (() => void) | undefined;
  readonly #hearer: Hearer;
  readonly #mouth: Mouth;
  readonly #turn: UserTurn;
  readonly hearMe: HearMeDialogue;
  #unwritten = false;
  readonly #o: ConversationOptions;

  constructor(options: ConversationOptions) {
    this.#o = options;
    this.#hearer = new Hearer({
      ...options,
      onEvent: (event) => this.#hearing(event),
      onEffect: (effect) => this.#carryOut(effect),
      onChange: () => this.#update({}),
    });
    this.#mouth = caseVoice({
      ...options,
      roomDb: () => this.#hearer.ears.loudness.roomDb,
      onSounding: (sounding) => this.#sound(sounding),
      onShow: (change) => this.#update(change),
      onReport: (report) => this.#report(report),
    });
    this.#turn = new UserTurn(this.#mouth);
    const onChange = (hearMe: HearMeTalk): void => this.#learn(hearMe);
    this.hearMe = new HearMeDialogue({ ...options, mouth: this.#mouth, onChange });
  }

  /** Listens with another engine from now on; the old one is given up. */
  async replaceRecogniser(recogniser: Recogniser): Promise<void> {
    this.#turn.end();
    this.#hearer.replace(recogniser, this.#mouth.isSpeaking);
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
    clock.align(session.state.log.setForwardMs);
    clock.onMoved((moved) => void session.clockMoved(moved).then((report) => this.#report(report)));
    if (opened.kind === "saved") this.#update({ saveText: opened.resumed ? "Case resumed" : "Case opened" });
    else this.#report({ ...(await session.tick(clock.nowMs())), saved: opened });
    this.#stopTicking = clock.every(TICK_MS, () => void this.#tick());
    void this.hearMe.load();
    await this.listen();
    // Not before: loading the voice beside the listener would make both late, and the first words would be lost.
    this.#mouth.say(...opened.announcements);
  }

  async listen(): Promise<void> {
    this.#update({ hearing: "loading", hearingText: "Loading" });
    const started = await this.#hearer.recogniser.start();
    if (!started.ok) this.#fault(started.error);
    await this.#mouth.warmUp();
  }

  /** Another protocol counts from now on; it is said, with whatever is due under its targets. */
  async useProtocol(loaded: LoadedProtocol): Promise<void> {
    const { session, clock } = this.#o;
    this.#report(await session.useProtocol(loaded, clock.nowMs()));
  }

  /** Shows something that is not of the case; what must be known though nobody looks is said too. */
  notice({ shown, said = [] }: Notice): void {
    this.#update(shown);
    this.#mouth.say(...said);
  }

  stopListening(): void {
    this.#o.session.setMicrophone(undefined);
    this.#hearer.recogniser.stop();
  }

  setMode(mode: ListeningMode): void {
    this.#hearer.recogniser.setMode(mode);
    this.#hearer.step({ kind: "mode", mode });
  }

  hold(down: boolean): void {
    this.#hearer.step({ kind: "hold", down });
  }

  /** A key that gives no sign of its release: once to begin a held utterance, once to end it. */
  press(): void {
    this.#hearer.step({ kind: "press", atMs: this.#o.clock.nowMs() });
  }

  typed(text: string): Promise<void> {
    const endedAtMs = this.#o.clock.nowMs();
    return this.#hear({ by: "typed", candidates: [{ words: text, score: 0 }], endedAtMs });
  }

  dispose(): void {
    this.#stopTicking?.();
    this.#hearer.recogniser.dispose();
    this.#mouth.dispose();
  }

  #carryOut(effect: Exclude<EarsEffect, { readonly kind: "hold" }>): void {
    switch (effect.kind) {
      case "take":
        this.#turn.answered(this.#hear(effect.utterance));
        return;
      case "attend":
        this.#mouth.mark("called");
        return;
      case "loudness":
        this.#mouth.say(effect.tooLoud ? TOO_LOUD : HEARING_AGAIN);
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
      this.#hearer.step({ kind: "answered", utterance, outcome: answer.outcome, waits, atMs });
      const outcome = shownOutcome(answer.outcome, report.saved);
      this.#update({ lastHeard: { words: answer.words, outcome } });
      const mark = markFor(outcome);
      if (mark !== undefined) this.#mouth.mark(mark);
    }
    this.#report(report);
  }

  async #tick(): Promise<void> {
    this.#turn.tick();
    this.#hearer.step({ kind: "tick", atMs: this.#o.clock.nowMs() });
    this.hearMe.tick();
    this.#report(await this.#o.session.tick(this.#o.clock.nowMs()));
  }

  #report(report: Report): void {
    const { unwritten, ...saving } = savingAfter({ ...this.#talk, unwritten: this.#unwritten }, report);
    this.#unwritten = unwritten;
    if (report.announcements.some(({ priority }) => priority === "high")) this.hearMe.interrupt();
    this.#useGrammar();
    this.#mouth.tell(toVoice(report));
    if (report.begun === true) this.#o.clock.align(report.state.log.setForwardMs);
    const { lastHeard } = this.#talk;
    const nowSaved = !unwritten && lastHeard?.outcome === "not saved";
    const heard = nowSaved ? { lastHeard: { ...lastHeard, outcome: "recorded" as const } } : {};
    this.#update({ ...saving, ...heard, ...(report.begun === true && NOTHING_YET) });
  }

  #useGrammar(): void {
    this.#hearer.useGrammar(this.hearMe.isRunning ? HEAR_ME_GRAMMAR : this.#o.session.grammar);
  }

  #hearing(event: HearingEvent): void {
    switch (event.kind) {
      case "level":
        this.#o.onMeter({ levelDb: event.levelDb, noiseDb: event.noiseDb, inSpeech: event.inSpeech });
        this.#hearer.step({ kind: "level", noiseDb: event.noiseDb, atMs: this.#o.clock.nowMs() });
        return;
      case "listening":
      case "recovered":
        this.#o.session.setMicrophone(undefined);
        this.#mouth.withdraw("listening", "microphoneLost");
        this.#update({ hearing: "listening", hearingText: "Listening" });
        return;
      case "stopped":
        // Whoever was talking is not heard any more: nothing may wait for the end of it.
        this.#turn.end();
        this.#hearer.step({ kind: "stopped" });
        this.#mouth.withdraw(TOO_LOUD.alertId);
        this.#update({ hearing: "off", hearingText: "Not listening" });
        return;
      case "speechStarted":
        this.#turn.start();
        return;
      case "speechEnded":
        this.#turn.soundEnded();
        return;
      case "heard":
        // A line of "hear me" is asked for: it needs no call word.
        if (this.hearMe.isRunning) this.#turn.answered(this.#hear(event.utterance));
        else this.#hearer.step({ kind: "heard", utterance: event.utterance });
        return;
      case "fault":
        this.#fault(event.error);
    }
  }

  #fault(error: RecogniserError): void {
    const text = sayRecogniserError(error);
    const lost = microphoneFault(error, this.#o.clock.nowMs());
    if (lost !== undefined) this.#o.session.setMicrophone(lost);
    this.#update({ hearing: "fault", hearingText: text });
    this.#turn.end();
    // One that hears nobody is an alert of its own, which the rules announce; the others only say what to do.
    if (lost === undefined) this.#mouth.say({ text, priority: "medium", alertId: "listening" });
    // It is not to wait for the next tick.
    else void this.#tick();
  }

  /** Our own voice sounds from now on, or is silent. */
  #sound(sounding: boolean): void {
    this.#hearer.voice(sounding);
    if (!sounding) this.hearMe.voiceEnded();
  }

  #learn(hearMe: HearMeTalk): void {
    this.#useGrammar();
    this.#hearer.step({ kind: "enrolled", profile: hearMe.profile });
    this.#update({ hearMe });
  }

  #update(change: Partial<TalkState>): void {
    this.#talk = { ...this.#talk, ...change, ...showEars(this.#hearer.ears, this.#o.clock.nowMs()) };
    this.#talk = { ...this.#talk, faults: this.#o.session.faults };
    this.#o.onChange(this.#talk);
  }
}
