import type { Random } from "../bench/random.ts";
import type { Body } from "./patient.ts";
import { spell } from "./spell.ts";

export type Topic = "pressure" | "hr" | "spo2" | "etco2" | "temp" | "glucose" | "icp" | "score" | "pupils";

const mean = ({ sbp, dbp }: Body): number => Math.round((sbp + 2 * dbp) / 3);

/** How each is said, in several ways that mean the same. */
const WORDINGS: Readonly<Record<Topic, readonly ((body: Body) => string)[]>> = {
  pressure: [
    (b) => `${spell(b.sbp)} over ${spell(b.dbp)}`,
    (b) => `blood pressure ${spell(b.sbp)} over ${spell(b.dbp)}`,
    (b) => `pressure is ${spell(b.sbp)} over ${spell(b.dbp)}`,
    (b) => `cuff ${spell(b.sbp)} over ${spell(b.dbp)}`,
    (b) => `map ${spell(mean(b))}`,
    (b) => `mean pressure ${spell(mean(b))}`,
    (b) => `${spell(b.sbp)} palpated`,
  ],
  hr: [(b) => `heart rate ${spell(b.hr)}`, (b) => `pulse ${spell(b.hr)}`, (b) => `rate ${spell(b.hr)}`],
  spo2: [
    (b) => `sats ${spell(b.spo2)}`,
    (b) => `saturation ${spell(b.spo2)} percent`,
    (b) => `s p o two ${spell(b.spo2)}`,
  ],
  etco2: [(b) => `end tidal ${spell(b.etco2)}`, (b) => `end tidal c o two ${spell(b.etco2)}`],
  temp: [(b) => `temp ${spell(b.temp)}`, (b) => `temperature ${spell(b.temp)} celsius`],
  glucose: [(b) => `glucose ${spell(b.glucose)}`, (b) => `blood sugar ${spell(b.glucose)} millimoles per litre`],
  icp: [(b) => `i c p ${spell(b.icp)}`, (b) => `i c p is ${spell(b.icp)}`],
  score: [(b) => `eyes ${spell(b.eye)} verbal not testable motor ${spell(b.motor)}`],
  pupils: [
    (b) => `left pupil three brisk right pupil ${spell(b.pupilRight)} ${b.rightFixed ? "fixed" : "brisk"}`,
    (b) => `right pupil ${spell(b.pupilRight)} ${b.rightFixed ? "fixed" : "brisk"}`,
  ],
};

export const sayReading = (topic: Topic, body: Body, random: Random): string => random.pick(WORDINGS[topic])(body);

/** A body as it is misread: one number well off, the rest as it is. */
export function misread(body: Body, random: Random): Body {
  const off = random.pick([-38, -30, 30, 34]);
  const sbp = Math.max(48, body.sbp + off);
  return { ...body, sbp, dbp: Math.min(Math.max(32, body.dbp + off), sbp - 12), spo2: Math.max(62, body.spo2 - 14) };
}

/** Said of a patient by mistake or in passing: nothing of it may become a value without being asked back. */
export const ODD: readonly string[] = [
  "sixty over ninety",
  "temp twenty six",
  "heart rate two forty",
  "sats forty two",
  "the weather is nice",
  "map one ninety",
  "end tidal ninety eight",
];
