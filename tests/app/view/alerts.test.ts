import { describe, expect, it } from "vitest";
import { viewAlerts } from "../../../src/app/view/alerts.ts";
import { viewTalking } from "../../../src/app/view/talking.ts";
import { viewTargets } from "../../../src/app/view/targets.ts";
import { defaultProtocol as protocol } from "../../../src/protocol/defaultProtocol.ts";
import { TalkedCase } from "../listState.ts";

/** Lines said one after another, a number being seconds that pass, and what the screen shows after the last. */
function seen(...lines: readonly (string | number)[]) {
  const c = new TalkedCase();
  let nowMs = 0;
  for (const line of lines) {
    if (typeof line === "string") {
      expect(c.say(line).answer?.outcome, line).toMatch(/recorded|answered|asked/);
      continue;
    }
    nowMs += line * 1000;
    c.wait(line);
  }
  const { log } = c.state;
  const alerts = viewAlerts(log, protocol, nowMs);
  return {
    alerts,
    alertOf: (id: string) => alerts.find((alert) => alert.id === id),
    targets: viewTargets(log, protocol),
    talking: viewTalking(log, nowMs),
  };
}

describe("alerts on the screen", () => {
  it("a suspended ceiling has no alert, and the targets say which and why", () => {
    const high = ["cause bleed", "systolic two hundred"] as const;
    const before = seen(...high);
    expect(before.alertOf("sbpHigh")?.text).toMatch(/^SBP 200, \d+ over target \d+, now$/);
    expect(before.targets.join(" ")).not.toContain("suspended");

    const herniating = seen(...high, "herniation suspected");
    expect(herniating.alertOf("sbpHigh")).toBeUndefined();
    expect(herniating.targets).toContainEqual(expect.stringMatching(/^SBP ceiling \d+ suspended: herniation\.$/));
  });

  it("is acknowledged once somebody has it, and not any more once it is worse", () => {
    expect(seen("map eight five").alertOf("mapLow")).toMatchObject({ acknowledged: false });
    expect(seen("map eight five", "heard").alertOf("mapLow")).toMatchObject({ acknowledged: true });
    const worse = seen("map eight five", "heard", "map six five");
    expect(worse.alertOf("mapLow")).toMatchObject({ acknowledged: false });
  });

  it("is news when it becomes worse, not when it grows old or somebody takes it on", () => {
    const newsOf = (...lines: readonly (string | number)[]) => seen(...lines).alertOf("mapLow")?.news;
    const first = newsOf("map eight five");
    expect(first).toMatch(/^\d+$/);
    expect(newsOf("map eight five", 50)).toBe(first);
    expect(newsOf("map eight five", "heard")).toBe(first);
    expect(newsOf("map eight five", 50, "map eight four")).toBe(first);
    expect(newsOf("map eight five", 50, "map six five")).not.toBe(first);
  });

  it("shows prompts with digits", () => {
    const { alerts } = seen("map nine five", "phase induce", 80);
    expect(alerts.map(({ text }) => text)).toContain("Pressure due, last 1 min 20 s ago");
  });
});

describe("how it talks, beside the hearing", () => {
  it.each<readonly [readonly (string | number)[], string]>([
    [[], ""],
    [["brief talk"], "Brief talk."],
    [["brief talk", "full talk"], ""],
    [["pause alerts two minutes", 40], "Alerts paused, 1 min 20 s left."],
    [["pause alerts two minutes", 120], ""],
    [["pause alerts two minutes", "alerts on"], ""],
    [["stand by", 10], `Standing by, ${protocol.timers.standByS.value - 10} s left.`],
    [["louder", "faster", "faster"], "Voice louder, fastest."],
  ])("%j", (lines, shown) => expect(seen(...lines).talking).toBe(shown));
});
