import type { Random } from "../bench/random.ts";
import type { Body, PatientKind } from "./patient.ts";
import { misread, ODD, sayReading, type Topic } from "./wordings.ts";

type Planned = { readonly atS: number; readonly say: () => string };
/** What the clinician hears of the tool in one second. */
export type Noticed = {
  /** The question that waits, if one does. */
  readonly questionId: string | undefined;
  readonly spoken: readonly { readonly text: string; readonly priority: string }[];
};

const MIN_S = 60;
const BREATH_S = 3;

const COURSE: readonly (readonly [number, string])[] = [
  [-430, "ketamine ten milligrams per mil"],
  [-410, "rocuronium ten milligrams per mil"],
  [-390, "noradrenaline four milligrams in two fifty"],
  [-370, "propofol ten milligrams per mil"],
  [-240, "oxygen running"],
  [-200, "capnograph ready"],
  [-190, "plan agreed"],
  [0, "ketamine given"],
  [22, "rocuronium given"],
  [80, "blade in"],
  [104, "tube in"],
  [126, "tube confirmed"],
  [240, "start propofol at twenty micrograms per kilo per minute"],
  [270, "start noradrenaline at point one micrograms per kilo per minute"],
  [420, "saline two fifty running"],
  [900, "phase watch"],
];

/**
 * Somebody at a bedside: says readings as often as people do, in varying words; sometimes the wrong one, sometimes nonsense;
 * answers most questions, calls out what is done, and says "heard" to some alerts. The same for the same seed.
 */
export class Clinician {
  readonly #random: Random;
  readonly #kind: PatientKind;
  readonly #inductionS: number;
  #body: Body | undefined;
  readonly #planned: Planned[] = [];
  #nextSetS = 45;
  #lastSaidS = -BREATH_S;
  #lastWrong: string | undefined;
  readonly #answered = new Set<string>();
  #tempS = -Infinity;
  #glucoseS = -Infinity;
  #neuroS = -Infinity;

  constructor(kind: PatientKind, random: Random, inductionS: number, lastsS: number, firstLines: readonly string[]) {
    this.#kind = kind;
    this.#random = random;
    this.#inductionS = inductionS;
    [...firstLines, ...kind.opening].forEach((line, i) => this.#plan(2 + 7 * i, () => line));
    for (const [atS, line] of COURSE) this.#plan(inductionS + atS, () => line);
    this.#plan(inductionS + 115, () => this.#read(["etco2"]));
    for (let atS = 40 * MIN_S; atS < lastsS; atS += (30 + random.below(40)) * MIN_S)
      this.#plan(atS, () => random.pick(["stand by", "status", "why map", "clocks"]));
  }

  /** What is said in this second, if anything. */
  next(nowS: number, body: Body): string | undefined {
    this.#body = body;
    if (nowS >= this.#nextSetS) this.#saySet(nowS);
    if (nowS - this.#lastSaidS < BREATH_S) return undefined;
    const due = this.#planned.findIndex(({ atS }) => atS <= nowS);
    const [planned] = due < 0 ? [] : this.#planned.splice(due, 1);
    if (planned === undefined) return undefined;
    this.#lastSaidS = nowS;
    return planned.say();
  }

  notice(nowS: number, { questionId, spoken }: Noticed): void {
    const random = this.#random;
    if (questionId !== undefined && !this.#answered.has(questionId)) {
      this.#answered.add(questionId);
      this.#answer(nowS);
    }
    for (const { text, priority } of spoken) {
      if (/pressure due/iu.test(text) && random.next() < 0.6)
        this.#nextSetS = Math.min(this.#nextSetS, nowS + 12 + random.below(25));
      if (priority !== "none" && random.next() < 0.4) this.#plan(nowS + 4 + random.below(4), () => "heard");
    }
  }

  #plan(atS: number, say: () => string): void {
    const after = this.#planned.findIndex((p) => p.atS > atS);
    this.#planned.splice(after < 0 ? this.#planned.length : after, 0, { atS, say });
  }

  #read(topics: readonly Topic[]): string {
    return topics.map((topic) => sayReading(topic, this.#body!, this.#random)).join(" and ");
  }

  /** Most questions are affirmed, some denied and said again, some left open. What was said wrong is never affirmed. */
  #answer(nowS: number): void {
    const atS = nowS + 3 + this.#random.below(4);
    const chance = this.#random.next();
    const right = this.#lastWrong;
    if (right !== undefined || chance > 0.93) {
      this.#plan(atS, () => "negative");
      this.#plan(atS + 5, () => right ?? this.#read(["pressure"]));
      this.#lastWrong = undefined;
    } else if (chance < 0.88) this.#plan(atS, () => "affirm");
  }

  /** The next set of readings, and when the one after it is taken. */
  #saySet(nowS: number): void {
    const random = this.#random;
    const sinceS = nowS - this.#inductionS;
    const isClose = sinceS > -5 * MIN_S && sinceS < 10 * MIN_S;
    this.#nextSetS = nowS + (isClose ? 50 + random.below(20) : 3 * MIN_S + random.below(7 * MIN_S));
    const some = (topic: Topic, chance: number): readonly Topic[] => (random.next() < chance ? [topic] : []);
    const topics: Topic[] = [
      "pressure",
      ...some("hr", 0.7),
      ...some("spo2", 0.85),
      ...(sinceS > 120 ? some("etco2", 0.8) : []),
      ...(this.#kind.knownIcp ? some("icp", 0.6) : []),
    ];
    if (nowS - this.#tempS > 30 * MIN_S) {
      topics.push("temp");
      this.#tempS = nowS;
    }
    if (nowS - this.#glucoseS > 20 * MIN_S) {
      topics.push("glucose");
      this.#glucoseS = nowS;
    }
    if (!isClose && nowS - this.#neuroS > 15 * MIN_S) {
      this.#plan(nowS + 20, () => this.#read(["score"]));
      this.#plan(nowS + 26, () => this.#read(["pupils"]));
      this.#neuroS = nowS;
    }
    const slip = random.next();
    if (slip < 0.1) this.#saySlip(nowS);
    else if (slip < 0.14) this.#plan(nowS, () => random.pick(ODD));
    else if (random.next() < 0.5) this.#plan(nowS, () => this.#read(topics));
    else topics.forEach((topic, i) => this.#plan(nowS + 5 * i, () => this.#read([topic])));
  }

  /** Said wrong, and put right a moment later in one of the ways that people do. */
  #saySlip(nowS: number): void {
    const random = this.#random;
    const topic = random.pick<Topic>(["pressure", "spo2"]);
    const way = random.pick(["correction", "disregard"]);
    const slip = (): string => {
      this.#lastWrong = sayReading(topic, this.#body!, random);
      return sayReading(topic, misread(this.#body!, random), random);
    };
    const right = (): string => {
      const said = this.#lastWrong ?? this.#read([topic]);
      this.#lastWrong = undefined;
      return said;
    };
    this.#plan(nowS, slip);
    const laterS = nowS + 8 + random.below(6);
    if (way === "correction") this.#plan(laterS, () => `correction ${right()}`);
    else {
      this.#plan(laterS, () => "disregard");
      this.#plan(laterS + 5, right);
    }
  }
}
