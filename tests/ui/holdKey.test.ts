import { describe, expect, it } from "vitest";
import { watchHoldKey } from "../../src/ui/holdKey.ts";

/** A window of sorts: events arrive at it with a target further in. */
function rig() {
  const source = new EventTarget();
  const heard: boolean[] = [];
  const key = watchHoldKey(source, (down) => heard.push(down));
  const send = (type: string, code: string, target: object = { tagName: "BODY" }) => {
    const event = new Event(type, { cancelable: true });
    Object.defineProperty(event, "code", { value: code });
    Object.defineProperty(event, "target", { value: target });
    source.dispatchEvent(event);
    return event;
  };
  return { source, heard, key, send };
}

describe("watchHoldKey", () => {
  it("holds from down to up, once however often the key repeats, and does not scroll the page", () => {
    const { heard, send } = rig();
    expect(send("keydown", "Space").defaultPrevented).toBe(true);
    expect(send("keydown", "Space").defaultPrevented).toBe(true);
    send("keyup", "Space");
    send("keyup", "Space");
    expect(heard).toEqual([true, false]);
  });

  it.each(["PageDown", "F13", "F19", "F20", "F24"])("takes %s of a pedal as Space", (code) => {
    const { heard, send } = rig();
    expect(send("keydown", code).defaultPrevented).toBe(true);
    send("keyup", code);
    expect(heard).toEqual([true, false]);
  });

  it.each([
    { code: "PageDown", holds: false },
    { code: "F13", holds: true },
    { code: "Space", holds: false },
  ])("while a line is typed $code holds: $holds", ({ code, holds }) => {
    const { heard, send } = rig();
    expect(send("keydown", code, { tagName: "INPUT", type: "text" }).defaultPrevented).toBe(holds);
    expect(heard).toEqual(holds ? [true] : []);
  });

  it.each([
    { name: "the typed line", target: { tagName: "INPUT", type: "text" }, holds: false },
    { name: "a button", target: { tagName: "BUTTON" }, holds: false },
    { name: "a text area", target: { tagName: "TEXTAREA" }, holds: false },
    { name: "the mode switch", target: { tagName: "INPUT", type: "radio" }, holds: true },
    { name: "the page", target: { tagName: "BODY" }, holds: true },
  ])("with the focus on $name: $holds", ({ target, holds }) => {
    const { heard, send } = rig();
    expect(send("keydown", "Space", target).defaultPrevented).toBe(holds);
    expect(heard).toEqual(holds ? [true] : []);
  });

  it("ends when the window loses the focus, and on release", () => {
    const { source, heard, key, send } = rig();
    send("keydown", "Space");
    source.dispatchEvent(new Event("blur"));
    expect(heard).toEqual([true, false]);
    send("keydown", "Space");
    key.release();
    expect(heard).toEqual([true, false, true, false]);
    send("keydown", "Space");
    expect(heard).toHaveLength(4);
  });

  it.each(["KeyA", "Enter", "PageUp", "F1", "F2", "F12", "AudioVolumeUp"])("takes %s for nothing", (code) => {
    const { heard, send } = rig();
    expect(send("keydown", code).defaultPrevented).toBe(false);
    expect(heard).toEqual([]);
  });
});
