import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { readAudioFile } from "../../src/cli/audioFile.ts";
import { ROOT } from "./lab.ts";

/** Recordings of people and of noise; not part of the project, beside it where they are there. */
const FOLDER = join(ROOT, "../shared/audio");

export type Row = Readonly<Record<string, string>>;

export const hasAudioSet = (): boolean => existsSync(join(FOLDER, "joined.csv"));

/** Rows of a comma-separated table with a header line. Quoted fields may hold commas and doubled quotes (RFC 4180). */
export function parseCsv(text: string): readonly Row[] {
  const fieldsOf = (line: string): readonly string[] =>
    [...`,${line}`.matchAll(/,(?:"((?:[^"]|"")*)"|([^,]*))/g)].map(
      ([, quoted, bare]) => quoted?.replaceAll('""', '"') ?? bare ?? "",
    );
  const [header = [], ...lines] = text
    .split(/\r?\n/)
    .filter((line) => line !== "")
    .map(fieldsOf);
  return lines.map((fields) => Object.fromEntries(header.map((name, i) => [name, fields[i] ?? ""])));
}

export const readRows = (table: string): readonly Row[] => parseCsv(readFileSync(join(FOLDER, table), "utf8"));

/** @returns 16 kHz, one channel. */
export async function readRecording(file: string): Promise<Float32Array> {
  const sound = await readAudioFile(join(FOLDER, file));
  if (!sound.ok) throw new Error(sound.error.message);
  return sound.value;
}

/** `name` is its class: helicopter, engine, … */
export type Noise = { readonly name: string; readonly file: string; readonly pcm: Float32Array };

export async function readNoises(): Promise<readonly Noise[]> {
  if (!hasAudioSet()) return [];
  const noises: Noise[] = [];
  for (const { file = "", noise = "" } of readRows("noise-manifest.csv"))
    noises.push({ name: noise, file, pcm: await readRecording(file) });
  return noises;
}
