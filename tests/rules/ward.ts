import { alertsDue, type AlertDue } from "../../src/rules/alertsDue.ts";
import { defaultProtocol } from "../../src/protocol/defaultProtocol.ts";
import type { Protocol } from "../../src/protocol/protocol.ts";
import { CaseBuilder } from "../log/caseBuilder.ts";

/** A case whose alerts are judged and announced as the app does it, one round at a time. */
export class Ward extends CaseBuilder {
  readonly #protocol: Protocol;

  constructor(protocol: Protocol = defaultProtocol) {
    super();
    this.#protocol = protocol;
  }

  /** Judges now, writes the facts, announces what is due, and returns it. */
  round(): readonly AlertDue[] {
    const { facts, announce } = alertsDue(this.state, this.#protocol, this.nowMs);
    this.add(...facts);
    for (const { alertId, priority, value } of announce)
      this.add({ type: "alert.announced", alertId, priority, value, text: "as said" });
    return announce;
  }

  /** "alertId reason priority" of what a round announces. */
  heardNow(): readonly string[] {
    return this.round().map(({ alertId, reason, priority }) => `${alertId} ${reason} ${priority}`);
  }

  standing(): Readonly<Record<string, string>> {
    return Object.fromEntries(Object.values(this.state.alerts).map((alert) => [alert.alertId, alert.priority]));
  }
}
