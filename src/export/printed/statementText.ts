import { unreachable } from "../../core/unreachable.ts";
import { showExactly } from "../../core/shownNumber.ts";
import type { StrikableCare } from "../../log/careState.ts";
import type { Fact } from "../../log/facts.ts";
import { findStep } from "../../protocol/findStep.ts";
import type { Protocol } from "../../protocol/protocol.ts";
import { AIRWAY_EVENTS, CLOCKS, PHASES } from "../../log/courseWords.ts";
import { clockChanged } from "./laneEvents.ts";
import { showAnswer } from "./stepTable.ts";
import { showLength } from "./times.ts";
import { capital, drugName, fluidName, showDose, showFinding, showMl, showStrength, showVital } from "./words.ts";

/** What was done for the patient, in words. */
function careText(fact: StrikableCare, protocol: Protocol): string {
  const drug = (id: string): string => drugName(protocol, id);
  switch (fact.type) {
    case "phase.entered":
      return `phase: ${PHASES[fact.phase]}`;
    case "airway.event":
      return AIRWAY_EVENTS[fact.event];
    case "clock.started":
      return `${CLOCKS[fact.clock]} starts`;
    case "clock.stopped":
      return `${CLOCKS[fact.clock]} ends`;
    case "strength.affirmed":
      return `${drug(fact.drugId)} ${showStrength(fact.strength)}, concentration affirmed`;
    case "drug.given":
      return `${drug(fact.drugId)} ${showDose(fact.amount)} given`;
    case "infusion.set":
      return `${drug(fact.drugId)} infusion ${fact.rate.value === 0 ? "stopped" : `at ${showDose(fact.rate)}`}`;
    case "fluid.given":
      return `${fluidName(protocol, fact.fluidId)} ${showMl(fact.volumeMl)} given`;
    case "cylinder.recorded":
      return `cylinder holds ${showExactly(fact.contentsL)} L, flow ${showExactly(fact.flowLPerMin)} L/min`;
    case "recipe.started":
      return `dilution of ${drug(fact.drugId)} begun`;
    case "recipe.moved":
      return `dilution, step ${fact.at + 1}`;
    case "recipe.ended":
      return "dilution ended";
    case "rescue.started":
      return "herniation rescue starts";
    case "rescue.ended":
      return "herniation rescue ends";
    case "failure.called":
      return "failed airway";
    default:
      return unreachable(fact);
  }
}

/** What a fact states, in words; none where it is no statement of anybody. */
export function statementText(fact: Fact, protocol: Protocol): string | undefined {
  switch (fact.type) {
    case "vital.recorded":
      return showVital(fact, protocol);
    case "finding.recorded":
      return showFinding(fact);
    case "sex.recorded":
      return `Sex ${fact.sex}`;
    case "cause.recorded":
      return protocol.targets.causes.find(({ id }) => id === fact.cause)?.label ?? `Cause ${fact.cause}`;
    case "herniation.recorded":
      return fact.present ? "Herniation suspected" : "No herniation";
    case "step.answered":
      return capital(`${findStep(protocol, fact.stepId)?.name ?? fact.stepId}: ${showAnswer(fact)}`);
    case "standBy.started":
      return "Stand by";
    case "protocol.replaced":
      return `From here on by protocol ${fact.protocol.name}, version ${fact.protocol.version}`;
    case "clock.changed":
      return capital(clockChanged(fact.byMs));
    case "device.slept":
      return `The device slept or stood still for ${showLength(fact.forMs)}: nothing was heard or watched`;
    case "case.closed":
      return "Case closed";
    case "alert.acknowledged":
      return "Alert acknowledged";
    case "alerts.paused":
      return fact.untilMs > fact.atMs
        ? `Alerts paused for ${showLength(fact.untilMs - fact.atMs)}`
        : "Alerts no longer paused";
    case "talk.set":
      return `Talk level: ${fact.level}`;
    case "voice.set":
      return `Voice: pace ${fact.pace}, volume ${fact.volume}`;
    case "phase.entered":
    case "airway.event":
    case "clock.started":
    case "clock.stopped":
    case "strength.affirmed":
    case "drug.given":
    case "infusion.set":
    case "fluid.given":
    case "cylinder.recorded":
    case "recipe.started":
    case "recipe.moved":
    case "recipe.ended":
    case "rescue.started":
    case "rescue.ended":
    case "failure.called":
      return capital(careText(fact, protocol));
    default:
      return undefined;
  }
}
