import { describe, expect, it } from "vitest";
import type { StepRow } from "../../../src/app/screenView.ts";
import { viewList } from "../../../src/app/view/list.ts";
import type { NewFact } from "../../../src/log/facts.ts";
import { context, SAID, TalkedCase } from "../listState.ts";

const shown = (c: TalkedCase) => viewList(c.state.log, context.protocol, 0);
function row(c: TalkedCase, id: string): Pick<StepRow, "state" | "text" | "killer"> | undefined {
  const found = shown(c)
    .groups.flatMap(({ steps }) => steps)
    .find((step) => step.id === id);
  return found && { state: found.state, text: found.text, killer: found.killer };
}

describe("the list on the screen", () => {
  it.each<readonly [said: readonly string[], id: string, state: StepRow["state"], text: string, killer: boolean]>([
    [[], "bleeding", "open", "open", false],
    [["next"], "bleeding", "called", "open", false],
    [["bleeding stopped"], "bleeding", "closed", "done", false],
    [["suction later"], "suction", "later", "later", false],
    [["tube eight"], "tube", "closed", "done, 8.0 mm", false],
    [["supraglottic four"], "supraglottic", "closed", "done, size 4", false],
    [["pressor running at five"], "pressorInfusion", "closed", "done, 5 mL/h", false],
    [["second medic calls pressure"], "whoCallsPressure", "closed", "done, second medic", false],
    [["osmotic not needed not indicated"], "osmotic", "passed", "not needed, not indicated", false],
    [["killer items", "waive no time"], "neuroExam", "passed", "waived, no time", true],
    [["map ninety five"], "meanPressure", "closed", "done, by the record", false],
    [["map ninety five", "map seven two"], "meanPressure", "open", "open", false],
    [["mean pressure later", "map ninety five"], "meanPressure", "closed", "done, by the record", false],
    [["bleeding stopped", "disregard"], "bleeding", "open", "open", false],
  ])("%j: %s is %s, %s", (said, id, state, text, killer) => {
    const c = new TalkedCase();
    for (const words of said) c.say(words);
    expect(row(c, id)).toEqual({ state, text, killer });
  });

  it.each<readonly [title: string, facts: readonly NewFact[], groups: readonly string[]]>([
    ["Preparation", [], ["patient", "drugs", "equipment", "team", "plan"]],
    ["After the tube", [{ type: "airway.event", event: "tubeConfirmed", ...SAID }], ["tubeIn", "settle"]],
    ["Rescue", [{ type: "rescue.started", ...SAID }], ["rescue"]],
    ["Failed airway", [{ type: "failure.called", ...SAID }], ["failedAirway"]],
  ])("is that of the moment: %s", (title, facts, groups) => {
    const view = shown(new TalkedCase(...facts));
    expect([view.listTitle, view.groups.map(({ id }) => id)]).toEqual([title, groups]);
    expect(view.progressText).toMatch(/^\d+ of \d+ steps done$/u);
  });

  it("counts what the rows show as closed", () => {
    const c = new TalkedCase();
    for (const words of ["bleeding stopped", "suction ready", "tube later", "map ninety five"]) c.say(words);
    const { groups, progressText } = shown(c);
    const closed = groups.map(({ steps }) => steps.filter((s) => s.state === "closed" || s.state === "passed").length);
    expect(groups.map(({ done }) => done)).toEqual(closed);
    expect(progressText).toBe("3 of 33 steps done");
  });
});
