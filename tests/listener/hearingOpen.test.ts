import { describe, expect, test } from "vitest";
import { OPEN_SILENCE, stepOpen, type OpenState } from "../../src/listener/hearingOpen.ts";

/**
 * One character a frame. Lower case: our own voice is silent; upper case: it sounds (or did a moment ago).
 * `s`/`S` speech beyond doubt, `w`/`W` some speech, `n`/`N` none.
 */
const PROBABILITY: Readonly<Record<string, number>> = { s: 0.95, w: 0.6, n: 0.05 };

function run(drawn: string): string {
  let state: OpenState = OPEN_SILENCE;
  const events: string[] = [];
  [...drawn].forEach((c, at) => {
    const gated = c !== c.toLowerCase();
    const [next, event] = stepOpen(state, at, PROBABILITY[c.toLowerCase()] ?? 0, gated);
    state = next;
    if (event?.kind === "started") events.push(`started ${event.first}`);
    if (event?.kind === "ended") events.push(`${event.fate} ${event.first}-${event.last}`);
  });
  return events.join(", ");
}

const pause = "n".repeat(18);
const PAUSE = "N".repeat(18);

describe("stepOpen", () => {
  test.each([
    ["speech is taken", `nnssssss${pause}`, "started 2, take 2-7"],
    ["a click is dropped", `nnsss${pause}`, "started 2, drop 2-4"],
    ["speech without a pause is refused", `${"s".repeat(400)}${pause}`, "started 0, refuse 0-399"],
    ["our own voice, as weak as echo cancelling leaves it, is nothing", `NN${"W".repeat(30)}NN${pause}`, ""],
    ["a person over our voice is announced and recognised in doubt", `NWWSSSSSS${PAUSE}`, "started 3, doubt 3-8"],
    ["also when our voice stops for it", `NNSSSSssss${pause}`, "started 2, doubt 2-9"],
    ["speech under way when our voice begins is doubted", `ssssssSSS${pause}`, "started 0, doubt 0-8"],
    [
      "weak sound when the gate shuts is waited out in silence",
      `WWWWwwww${pause}nnsssss${pause}`,
      "started 28, take 28-32",
    ],
    ["an answer after the gate is taken", `WWWWNNnnsssss${pause}`, "started 8, take 8-12"],
    ["a beginning that the gate interrupts is forgotten", `nssNNNNn${pause}`, ""],
  ])("%s", (_, drawn, events) => {
    expect(run(drawn)).toBe(events);
  });
});
