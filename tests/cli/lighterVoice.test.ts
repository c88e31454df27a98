import { beforeAll, describe, expect, it } from "vitest";
import { createFlite, type Flite } from "../../src/adapters/voice/synthesise.ts";
import { lighterVoice } from "../../src/cli/lighterVoice.ts";
import { readDictionary } from "../../src/cli/readGrammars.ts";
import { defaultProtocol } from "../../src/protocol/defaultProtocol.ts";
import { fliteWasm } from "../adapters/voice/flite.ts";

const lighter = (): Uint8Array<ArrayBuffer> => {
  const made = lighterVoice(fliteWasm());
  if (!made.ok) throw new Error(made.error);
  return new Uint8Array(made.value);
};

const CHUNK = 20;
/** Every so many words of the language; all of them were compared once. */
const STRIDE = 8;
const WORDS = [
  ...new Set(
    readDictionary()
      .split("\n")
      .flatMap((line) => /^[a-z']+/u.exec(line)?.[0] ?? []),
  ),
].filter((_word, i) => i % STRIDE === 0);
const NAMES = defaultProtocol.drugs.flatMap(({ names }) => Object.values(names));
const NUMBERS = Array.from({ length: 60 }, (_none, i) => String(i * 5 + (i % 5)));
const SPOKEN = [...WORDS, ...NAMES, ...NUMBERS];
const TEXTS = Array.from({ length: Math.ceil(SPOKEN.length / CHUNK) }, (_none, i) =>
  SPOKEN.slice(i * CHUNK, (i + 1) * CHUNK).join(" "),
);

describe("the synthesiser with one voice only", () => {
  let whole: Flite;
  let light: Flite;
  beforeAll(async () => {
    whole = await createFlite({ wasmBytes: fliteWasm() });
    light = await createFlite({ wasmBytes: lighter() });
  });
  const sound = (flite: Flite, ...said: Parameters<Flite["synthesise"]>) => {
    const made = flite.synthesise(...said);
    if (!made.ok) throw new Error(made.error.detail);
    return Buffer.from(made.value.pcm.buffer);
  };

  it("has less than half of the bytes", () => {
    expect(lighter().length).toBeLessThan(fliteWasm().length / 2);
  });

  it.each(TEXTS)("says to the bit what the whole one says: %s", (text) => {
    const expected = sound(whole, text);
    expect(expected.length).toBeGreaterThan(10_000);
    expect(sound(light, text).equals(expected)).toBe(true);
  });

  it("can no longer speak with the voices that were left out", () => {
    const said = light.synthesise("Ninety five.", { voice: "slt" });
    expect(said.ok && Buffer.from(said.value.pcm.buffer).equals(sound(whole, "Ninety five.", { voice: "slt" }))).toBe(
      false,
    );
  });

  it("is made from the known file only", () => {
    const other = fliteWasm();
    other[20_000_000]! ^= 1;
    expect(lighterVoice(other)).toMatchObject({ ok: false });
  });
});
