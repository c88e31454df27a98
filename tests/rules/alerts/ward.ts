import { alertsDue, type AlertDue } from "../../../src/rules/alerts/alertsDue.ts";
import { defaultProtocol } from "../../../src/protocol/defaultProtocol.ts";
import type { Protocol } from "../../../src/protocol/protocol.ts";
import type { DeviceFault } from "../../../src/rules/alerts/condition.ts";
import { emptyCase, type CaseState } from "../../../src/log/caseState.ts";
import { CaseBuilder } from "../../log/caseBuilder.ts";

/** A case whose alerts are judged and announced as the app does it, one round at a time. */
export class Ward extends CaseBuilder {
  readonly #protocol: Protocol;
  /** The case as it was judged last. */
  #judged: CaseState = emptyCase;
  devices: readonly DeviceFault[] = [];

  constructor(protocol: Protocol = defaultProtocol) {
    super();
    this.#protocol = protocol;
  }

  /** Judges now, writes the facts, announces what is due, and returns it. */
  round(): readonly AlertDue[] {
    const struck = this.facts.slice(this.#judged.factCount).some(({ type }) => type === "entry.struck");
    const struckFrom = struck ? this.#judged : undefined;
    const { facts, announce } = alertsDue(this.state, this.#protocol, this.nowMs, this.devices, struckFrom);
    this.add(...facts);
    for (const { alertId: speaker, covers, voice } of announce)
      for (const { alertId, priority, value } of covers) {
        const isSpoken = alertId === speaker && voice === "spoken";
        const unspoken = isSpoken ? {} : { unspoken: true as const };
        this.add({ type: "alert.announced", alertId, priority, value, text: "as said", ...unspoken });
      }
    this.#judged = this.state;
    return announce;
  }

  /** Somebody has this alert. */
  has(alertId: string): void {
    this.add({ type: "alert.acknowledged", alertId, heard: "heard" });
  }

  /** "alertId reason priority" of what a round announces; "tone" after one that is no words, "louder" after one that is. */
  heardNow(): readonly string[] {
    return this.round().map(({ alertId, reason, priority, voice, louder }) =>
      [alertId, reason, priority, ...(voice === "tone" ? ["tone"] : []), ...(louder ? ["louder"] : [])].join(" "),
    );
  }

  standing(): Readonly<Record<string, string>> {
    return Object.fromEntries(Object.values(this.state.alerts).map((alert) => [alert.alertId, alert.priority]));
  }
}
