import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  BARGE_IN_ENDPOINT,
  FRAME_MS,
  lingerAfter,
  OPEN_ENDPOINT,
  SILENCE,
  stepEndpoint,
  type EndpointEvent,
  type EndpointSettings,
  type EndpointState,
} from "../../src/listener/endpoint.ts";

function run(
  probabilities: readonly number[],
  settings: EndpointSettings,
  from: EndpointState = SILENCE,
): { at: number; event: EndpointEvent }[] {
  let state = from;
  const events: { at: number; event: EndpointEvent }[] = [];
  probabilities.forEach((probability, at) => {
    const [next, event] = stepEndpoint(state, at, probability, settings);
    state = next;
    if (event !== undefined) events.push({ at, event });
  });
  return events;
}

/** One character a frame: `#` surely speech, `+` speech, `~` only enough to go on, `.` none. */
const PROBABILITY: Readonly<Record<string, number>> = { "#": 0.95, "+": 0.6, "~": 0.4, ".": 0.05 };
const frames = (drawn: string): number[] => [...drawn].map((c) => PROBABILITY[c] ?? 0);

const show = (events: readonly { at: number; event: EndpointEvent }[]): string =>
  events
    .map(({ at, event }) =>
      event.kind === "ended"
        ? `${at} ${event.length} ${event.first}-${event.last}`
        : `${at} ${event.kind}${event.kind === "started" ? ` ${event.first}` : ""}`,
    )
    .join(", ");

const PAUSE = ".".repeat(18); // 18 frames are 576 ms
const HALF = ".".repeat(16); // 512 ms

describe("stepEndpoint, open listening", () => {
  test.each([
    ["nothing", "......", ""],
    ["never sure enough to begin", "~~~~~~~~", ""],
    ["two frames are a click", `.++..${PAUSE}`, ""],
    ["three in a row begin", "..+++", "4 started 2"],
    ["a sure frame and weaker ones begin", "..+~~", "4 started 2"],
    ["begins and ends", `..+++++++${PAUSE}`, "4 started 2, 26 fit 2-8"],
    ["too short to be a word", `..+++${PAUSE}`, "4 started 2, 22 short 2-4"],
    ["weak frames go on", `..+++~~~~~~~~${PAUSE}`, "4 started 2, 30 fit 2-12"],
    ["half a second is a pause inside", `+++++${HALF}+++++${PAUSE}`, "2 started 0, 43 fit 0-25"],
    ["a longer one is an end", `+++++${PAUSE}.+++++${PAUSE}`, "2 started 0, 22 fit 0-4, 26 started 24, 46 fit 24-28"],
  ])("%s", (_, drawn, events) => {
    expect(show(run(frames(drawn), OPEN_ENDPOINT))).toBe(events);
  });

  test("speech that never pauses is called long", () => {
    const longest = Math.floor(OPEN_ENDPOINT.maxSpeechMs / FRAME_MS);
    const fit = run(frames("+".repeat(longest) + PAUSE), OPEN_ENDPOINT).at(-1);
    const long = run(frames("+".repeat(longest + 1) + PAUSE), OPEN_ENDPOINT).at(-1);
    expect(fit?.event).toMatchObject({ kind: "ended", length: "fit" });
    expect(long?.event).toMatchObject({ kind: "ended", length: "long" });
  });
});

// What was said in frames −20 to −10 might go on until frame 6: 16 frames are 512 ms.
test.each([
  ["nothing follows", "........", "6 expired"],
  ["weak sound is nothing", "~~~~~~~~", "6 expired"],
  ["a click is nothing", "..++....", "6 expired"],
  ["speech goes on, with the old beginning", `...+++++${PAUSE}`, "25 fit -20-7"],
  ["speech that begins in the last moment goes on", `.....+++${PAUSE}`, "25 fit -20-7"],
])("after an end that might not be one: %s", (_, drawn, events) => {
  const lingering = lingerAfter({ first: -20, last: -10 }, 16 * FRAME_MS);
  expect(show(run(frames(drawn), OPEN_ENDPOINT, lingering))).toBe(events);
});

test("a strict beginning needs a surer frame, and no second one", () => {
  expect(show(run(frames("+++++++++"), BARGE_IN_ENDPOINT))).toBe("");
  expect(show(run(frames("#"), BARGE_IN_ENDPOINT))).toBe("0 started 0");
  expect(BARGE_IN_ENDPOINT.startProbability).toBeGreaterThan(OPEN_ENDPOINT.startProbability);
  // From the first sound of a word to our silence there are 200 ms; the model itself takes most of them.
  expect(BARGE_IN_ENDPOINT.startFrames * FRAME_MS).toBeLessThanOrEqual(32);
});

describe("stepEndpoint, whatever comes", () => {
  const anything = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { maxLength: 600 });

  test("beginnings and ends alternate, in order, and frame what they say", () => {
    fc.assert(
      fc.property(anything, (probabilities) => {
        let lastEnd = -1;
        let open: number | undefined;
        for (const { at, event } of run(probabilities, OPEN_ENDPOINT)) {
          if (event.kind === "started") {
            expect(open).toBeUndefined();
            expect(event.first).toBeGreaterThan(lastEnd);
            expect(probabilities[event.first]).toBeGreaterThanOrEqual(OPEN_ENDPOINT.startProbability);
            open = event.first;
          } else if (event.kind === "ended") {
            expect(event.first).toBe(open);
            expect(probabilities[event.last]).toBeGreaterThanOrEqual(OPEN_ENDPOINT.stayProbability);
            expect((at - event.last) * FRAME_MS).toBeGreaterThanOrEqual(OPEN_ENDPOINT.endSilenceMs);
            lastEnd = event.last;
            open = undefined;
          }
        }
      }),
    );
  });

  test("enough silence always brings it back to silence", () => {
    fc.assert(
      fc.property(anything, (probabilities) => {
        let state: EndpointState = SILENCE;
        [...probabilities, ...frames(PAUSE)].forEach((p, at) => {
          [state] = stepEndpoint(state, at, p, OPEN_ENDPOINT);
        });
        expect(state).toEqual(SILENCE);
      }),
    );
  });
});
