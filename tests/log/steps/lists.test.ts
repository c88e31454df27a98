import { describe, expect, it } from "vitest";
import { defaultProtocol as protocol } from "../../../src/protocol/defaultProtocol.ts";
import { selectList, selectNextStep } from "../../../src/log/steps/currentList.ts";
import { placesOf, type ListId } from "../../../src/log/steps/lists.ts";
import { CaseBuilder } from "../caseBuilder.ts";

const SAID = { heard: "as said", by: "typed" } as const;
const rescue = (c: CaseBuilder, change: "started" | "ended") => c.add({ type: `rescue.${change}`, ...SAID });
const failed = (c: CaseBuilder) => c.add({ type: "failure.called", ...SAID });
const tube = (c: CaseBuilder, event: "tubeIn" | "tubeConfirmed" | "tubeOut") =>
  c.add({ type: "airway.event", event, ...SAID });
function answerAll(c: CaseBuilder, list: ListId): void {
  for (const { step } of placesOf(protocol, list)) c.answer(step.id, "done");
}
const read = (c: CaseBuilder, mode: "all" | "killer") => c.add({ type: "list.read", mode });

type Row = readonly [name: string, play: (c: CaseBuilder) => unknown, list: ListId, next: string | undefined];

const ROWS: readonly Row[] = [
  ["at first", () => undefined, "prepare", "bleeding"],
  ["the tube in, not confirmed", (c) => tube(c, "tubeIn"), "prepare", "bleeding"],
  ["the tube confirmed", (c) => (tube(c, "tubeIn"), tube(c, "tubeConfirmed")), "afterTube", "tubeDepth"],
  ["the tube out again", (c) => (tube(c, "tubeConfirmed"), tube(c, "tubeOut")), "prepare", "bleeding"],
  ["all after the tube answered", (c) => (tube(c, "tubeConfirmed"), answerAll(c, "afterTube")), "afterTube", undefined],
  [
    "answered after a tube that came out",
    (c) => (
      tube(c, "tubeConfirmed"),
      answerAll(c, "afterTube"),
      tube(c, "tubeOut"),
      tube(c, "tubeIn"),
      tube(c, "tubeConfirmed")
    ),
    "afterTube",
    "tubeDepth",
  ],
  ["a rescue", (c) => rescue(c, "started"), "rescue", "rescueHeadUp"],
  ["a rescue after the tube", (c) => (tube(c, "tubeConfirmed"), rescue(c, "started")), "rescue", "rescueHeadUp"],
  ["a rescue over", (c) => (rescue(c, "started"), rescue(c, "ended")), "prepare", "bleeding"],
  ["a rescue with its steps answered", (c) => (rescue(c, "started"), answerAll(c, "rescue")), "prepare", "bleeding"],
  [
    "a second rescue starts anew",
    (c) => (rescue(c, "started"), answerAll(c, "rescue"), rescue(c, "ended"), rescue(c, "started")),
    "rescue",
    "rescueHeadUp",
  ],
  ["a failed airway", failed, "failedAirway", "failureCalled"],
  ["a failed airway with its steps answered", (c) => (failed(c), answerAll(c, "failedAirway")), "prepare", "bleeding"],
  [
    "a failed airway called again starts anew",
    (c) => (failed(c), answerAll(c, "failedAirway"), failed(c)),
    "failedAirway",
    "failureCalled",
  ],
  ["a failed airway and then a tube", (c) => (failed(c), tube(c, "tubeConfirmed")), "afterTube", "tubeDepth"],
  ["a failed airway after a tube", (c) => (tube(c, "tubeConfirmed"), failed(c)), "failedAirway", "failureCalled"],
  ["a failed airway in a rescue", (c) => (rescue(c, "started"), failed(c)), "failedAirway", "failureCalled"],
  ["a rescue in a failed airway", (c) => (failed(c), rescue(c, "started")), "rescue", "rescueHeadUp"],
  ["a failed airway struck", (c) => c.strike(...failed(c)), "prepare", "bleeding"],
  ["the killer items in a rescue", (c) => (rescue(c, "started"), read(c, "killer")), "prepare", "neuroExam"],
  [
    "the killer items after the tube",
    (c) => (c.add({ type: "phase.entered", phase: "settle", ...SAID }), read(c, "killer")),
    "afterTube",
    undefined,
  ],
];

describe("the list that counts now", () => {
  it.each(ROWS)("%s", (_name, play, list, next) => {
    const c = new CaseBuilder();
    play(c);
    expect([selectList(c.state, protocol, c.nowMs), selectNextStep(c.state, protocol, c.nowMs)?.step.id]).toEqual([
      list,
      next,
    ]);
  });
});
