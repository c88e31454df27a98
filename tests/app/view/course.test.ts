import { describe, expect, it } from "vitest";
import { viewCourse } from "../../../src/app/view/course.ts";
import type { NewFact } from "../../../src/log/facts.ts";
import { defaultProtocol as protocol } from "../../../src/protocol/defaultProtocol.ts";
import { CaseBuilder } from "../../log/caseBuilder.ts";
import { context, SAID, TalkedCase } from "../listState.ts";

type Course = ReturnType<typeof viewCourse>;

const airway = (event: "bladeIn" | "out" | "tubeIn" | "tubeConfirmed" | "tubeOut"): NewFact => ({
  type: "airway.event",
  event,
  ...SAID,
});

/** Facts at seconds of the case, seen at another second. */
function seen(facts: readonly (readonly [atS: number, fact: NewFact])[], atS: number): Course {
  const b = new CaseBuilder();
  for (const [factS, fact] of facts) b.at(factS).add(fact);
  return viewCourse(b.state, protocol, atS * 1000);
}

/** "label text", with "!" in front of what is over and "^" in front of what counts up. */
const shown = ({ clocks }: Course): readonly string[] =>
  clocks.map(({ label, text, over, countsUp }) => `${over ? "!" : ""}${countsUp ? "^" : ""}${label} ${text}`);

describe("where the case stands, on the screen", () => {
  it("begins with the first phase: no attempt, no clock", () => {
    expect(seen([], 600)).toEqual({ phaseText: "Assessment phase", attemptText: "", clocks: [] });
  });

  it.each<readonly [name: string, events: Parameters<typeof airway>[0][], phase: string, attempt: string]>([
    ["a blade", ["bladeIn"], "Intubation phase", "Attempt 1, running"],
    ["out without a tube", ["bladeIn", "out"], "Intubation phase", "Attempt 1, no tube"],
    ["a second blade", ["bladeIn", "out", "bladeIn"], "Intubation phase", "Attempt 2, running"],
    ["a tube", ["bladeIn", "tubeIn"], "Intubation phase", "Attempt 1, tube in, not confirmed"],
    ["a tube confirmed", ["bladeIn", "tubeIn", "tubeConfirmed"], "Settling phase", "Attempt 1, tube confirmed"],
    ["a tube out again", ["bladeIn", "tubeIn", "tubeOut"], "Intubation phase", "Attempt 1, tube out again"],
  ])("after %s", (_name, events, phaseText, attemptText) => {
    const facts = events.map((event, i) => [i * 20, airway(event)] as const);
    expect(seen(facts, 200)).toMatchObject({ phaseText, attemptText });
  });

  it("lets a running attempt count up, and drops its clock with the blade", () => {
    const facts = [[10, airway("bladeIn")]] as const;
    expect(shown(seen(facts, 50))).toContain("^Attempt 1 0:40");
    const after = shown(seen([...facts, [50, airway("out")]], 60));
    expect(after.filter((text) => text.includes("Attempt"))).toEqual([]);
  });

  it("marks a tube without a CO2 value as over once the protocol's time has passed", () => {
    const facts = [
      [0, airway("bladeIn")],
      [20, airway("tubeIn")],
    ] as const;
    const limitS = protocol.timers.co2AfterTubeS.value;
    // Two digits of seconds, or the texts below are not what is printed.
    expect(limitS).toBeGreaterThan(10);
    expect(limitS).toBeLessThan(60);
    const label = "Tube without CO2 value";
    const at = (afterS: number) => shown(seen(facts, 20 + afterS)).find((text) => text.includes(label));
    expect(at(limitS - 1)).toBe(`^${label} 0:${limitS - 1}`);
    expect(at(limitS)).toBe(`!^${label} 0:${limitS}`);
  });

  it("says that the time of a rescue is up, never that it is due", () => {
    const facts = [[0, { type: "rescue.started", ...SAID }]] as const;
    const lastS = protocol.timers.herniationMeasuresS.value;
    expect(shown(seen(facts, lastS - 90))).toContain("Rescue 1:30 left");
    expect(shown(seen(facts, lastS))).toContain("!Rescue time is up");
  });

  it("goes back when the words that moved it on are taken back", () => {
    const c = new TalkedCase();
    const before = viewCourse(c.state.log, context.protocol, 0);
    c.say("blade in");
    expect(viewCourse(c.state.log, context.protocol, 0).attemptText).toBe("Attempt 1, running");
    c.say("disregard");
    expect(viewCourse(c.state.log, context.protocol, 0)).toEqual(before);
  });
});
