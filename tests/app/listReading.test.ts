import { describe, expect, it } from "vitest";
import { startList } from "../../src/app/decide/care/list/readList.ts";
import type { NewFact } from "../../src/log/facts.ts";
import { placesOf } from "../../src/log/steps/lists.ts";
import { context, SAID, TalkedCase } from "./listState.ts";

const confirmed: NewFact = { type: "airway.event", event: "tubeConfirmed", ...SAID };
const rescue: NewFact = { type: "rescue.started", ...SAID };
const standByS = context.protocol.timers.standByS.value;
const timeoutS = context.protocol.timers.questionTimeoutS.value;

describe("what follows the tube", () => {
  it("is read with its values; a vital answers its step as a vital", () => {
    const c = new TalkedCase(confirmed);
    expect(c.reply("read the list")).toBe("Tube depth at the lip?");
    expect(c.reply("depth is twenty two")).toBe(
      "Tube depth: twenty two centimetres. Pressure each minute for the next ten?",
    );
    expect(c.reply("pressure cycling")).toBe("Pressure each minute: done. End tidal in band, not breathing too fast?");
    const co2 = c.say("thirty eight");
    expect(co2.facts.map((f) => (f.type === "vital.recorded" ? [f.code, f.value] : f.type))).toEqual([
      ["etco2", 38],
      "step.called",
    ]);
    expect(co2.answer?.reply).toBe("End tidal thirty eight. Sedation and pain relief running: what rate?");
  });

  it("a CO2 out of its band leaves the step open", () => {
    const c = new TalkedCase(
      confirmed,
      { type: "step.called", stepId: "carbonDioxide" },
      { type: "list.read", mode: "all" },
    );
    expect(c.reply("end tidal five two")).toBe("End tidal fifty two. Back to carbon dioxide.");
  });

  it("says that it is complete, and that watch begins", () => {
    const c = new TalkedCase(
      confirmed,
      ...placesOf(context.protocol, "afterTube")
        .filter(({ step }) => step.id !== "tubeDepth")
        .map(({ step }): NewFact => ({ type: "step.answered", stepId: step.id, answer: "done", ...SAID })),
    );
    expect(c.reply("next")).toBe("Tube depth at the lip?");
    expect(c.reply("twenty two")).toBe("Tube depth: twenty two centimetres. After the tube complete. Watch begins.");
  });
});

describe("a rescue", () => {
  const begun = () => {
    const c = new TalkedCase(rescue);
    c.add(...startList(context, c.state.log, "all", 0).facts);
    return c;
  };

  it("is read from its first step, and its end begins nothing else", () => {
    const c = begun();
    expect(c.reply("sats ninety six")).toBe("Sats ninety six. Back to head up.");
    const replies = ["done", "later", "done", "osmotic running", "done", "surgeon called"].map((s) => c.reply(s));
    expect(replies[0]).toBe("Head up: done. Mean pressure above the raised floor?");
    expect(replies[1]).toBe("Rescue pressure: later. Carbon dioxide in the rescue band, timed?");
    expect(replies.at(-1)).toBe("Neurosurgeon: done. Put off: rescue pressure.");
    expect(c.state.log.care.list).toBe("off");
  });

  it("that ends by a word ends its list without a word", () => {
    const c = begun();
    c.add({ type: "rescue.ended", ...SAID });
    c.say("sats ninety six");
    expect(c.reply("next")).toBe("Bleeding stopped, pelvis bound if suspected?");
  });
});

describe("the list as time passes", () => {
  it("is taken up after standing by, once", () => {
    const c = new TalkedCase();
    c.say("read the list");
    c.say("stand by");
    expect(c.wait(standByS - 1)).toEqual([]);
    expect(c.wait(1)).toEqual(["Back to bleeding."]);
    expect(c.wait(1)).toEqual([]);
  });

  it("goes on after standing by where the step was answered meanwhile", () => {
    const c = new TalkedCase();
    c.say("read the list");
    c.say("stand by");
    expect(c.reply("done")).toBe("Bleeding: done.");
    expect(c.wait(standByS)).toEqual(["Mean pressure at target?"]);
  });

  it("is taken up after a question that nobody answered; a value not given is no matter", () => {
    const c = new TalkedCase();
    c.say("read the list");
    c.say("icp fifteen");
    expect(c.wait(timeoutS)).toEqual(["Not confirmed: i c p fifteen.", "Back to bleeding."]);
    expect(c.reply("tube ready")).toBe("Tube: done. Tube size?");
    expect(c.wait(timeoutS)).toEqual(["Back to bleeding."]);
  });

  it("names the step after an alert", () => {
    const c = new TalkedCase();
    c.say("read the list");
    expect(c.reply("sats eighty five")).toBe("Sats eighty five. Back to bleeding.");
    expect(c.wait(context.protocol.timers.reannounceS.high.value)).toEqual([
      "Sats eighty five, nine under ninety four. One minute old.",
      "Back to bleeding.",
    ]);
  });

  it("goes on when time answers the step that waits", () => {
    const started: NewFact = { type: "clock.started", clock: "preoxygenation", ...SAID };
    const c = new TalkedCase(started);
    c.say("killer items");
    c.say("later");
    expect(c.state.log.calledStepId).toBe("preoxygenation");
    expect(c.wait(context.protocol.oxygen.preoxygenateS.value - 1)).toEqual([]);
    expect(c.wait(1)).toEqual([
      "Preoxygenation complete, three minutes.",
      "Push dose pressor drawn up: what concentration?",
    ]);
  });
});
