import { beforeAll, expect, it } from "vitest";
import { createFlite, type Flite } from "../../src/adapters/voice/synthesise.ts";
import { defaultProtocol } from "../../src/protocol/defaultProtocol.ts";
import { fliteWasm } from "../adapters/voice/flite.ts";

const steps = defaultProtocol.groups.filter(({ phase }) => phase === "prepare").flatMap((group) => group.steps);

/** Quiet between one challenge and the next, so that each is heard as its own. */
const GAP_S = 0.5;
const WHOLE_LIST_S = 90;
const KILLERS_S = 30;

let flite: Flite;
beforeAll(async () => {
  flite = await createFlite({ wasmBytes: fliteWasm() });
});

/** How long the built-in voice takes to read challenges out. */
function secondsOf(challenges: readonly string[]): number {
  return challenges.reduce((sum, challenge) => {
    const said = flite.synthesise(challenge);
    if (!said.ok) throw new Error(said.error.detail);
    return sum + GAP_S + said.value.pcm.length / said.value.sampleRate;
  }, 0);
}

it("the whole preparation is read out within its time", () => {
  expect(secondsOf(steps.map(({ challenge }) => challenge))).toBeLessThanOrEqual(WHOLE_LIST_S);
});

it("the killer items alone are read out within theirs", () => {
  const killers = steps.filter(({ killer }) => killer);
  expect(killers.length).toBeGreaterThan(0);
  expect(secondsOf(killers.map(({ challenge }) => challenge))).toBeLessThanOrEqual(KILLERS_S);
});
