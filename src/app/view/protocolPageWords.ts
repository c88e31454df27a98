import { VITALS, type VitalCode } from "../../core/vitals.ts";
import { unitEnding } from "./protocolPageAmount.ts";

/**
 * How an entry of the file is called on the page, where its key does not say it. Empty: the heading says it already.
 * A key without a line here is shown as its own words, so that no entry is ever left out.
 */
const KEY_WORDS: Readonly<Record<string, string>> = {
  // Groups of the file whose name is the heading.
  targets: "",
  oxygen: "",
  pressures: "",
  shock: "",
  trend: "",
  lowPressure: "",
  permissions: "",
  ventilation: "",
  tubes: "",
  timers: "",
  doses: "",
  readBack: "",
  structure: "order after the lowest pressures",
  // Targets
  sbpMmHg: "SBP",
  mapMmHg: "MAP",
  cppMmHg: "CPP",
  critical: "emergency under",
  noGainAbove: "no gain above",
  icpTreatAboveMmHg: "ICP, treat above",
  unknownAge: "until an age is known, the targets of",
  herniationSparesPressure: "no ceiling on SBP while herniation is treated",
  spo2Pct: "SpO2",
  etco2MmHg: "EtCO2",
  herniation: "in herniation",
  paco2MmHg: "PaCO2",
  pao2MmHg: "PaO2",
  tempCel: "temperature",
  glucoseMmolPerL: "glucose",
  osmolalityStopMosmPerKg: "osmolality, stop osmotic agents at",
  // Pressure, shock, signs
  assumedIcpMmHg: "ICP assumed while it is not measured",
  halvesWithinS: "systolic and diastolic said apart are one reading within",
  apartMmHg: "two mean pressures disagree when further apart than",
  transducerLevel: "arterial transducer, level until it is said",
  warnAt: "shock index, first warning at",
  strongAt: "shock index, strong warning at",
  windowS: "trend drawn through the last",
  cushing: "Cushing pattern",
  enabled: "watched",
  sbpRisePct: "rise of SBP",
  hrFallPct: "fall of HR",
  hrBelowPerMin: "HR under",
  gcsFall: "fall of GCS as a sign of herniation",
  fromUnder: "from a total under",
  pupilDifferenceMm: "pupils unequal when further apart than",
  publishedSbpFloorMmHg: "low pressure, SBP under",
  unknownAfterS: "pressure unknown after",
  // Oxygen
  preoxygenateS: "oxygen before intubation for",
  endTidalO2Fraction: "end-tidal oxygen fraction to reach",
  maskLPerMin: "oxygen by mask",
  nasalLPerMin: "oxygen by nose",
  stopSpo2Pct: "attempt stops at SpO2",
  dangerSpo2Pct: "danger at SpO2",
  cylinderReserveFraction: "part of a cylinder kept in reserve",
  cylinderWarnMin: "warned when a cylinder lasts no longer than",
  // Fluids and permissions
  adultMl: "adult",
  childMlPerKg: "child",
  centralLineOnly: "only by central line",
  onsetS: "onset",
  durationS: "duration",
  regions: "on sale",
  osmotherapyPrehospital: "osmotic agents before hospital",
  tranexamicAcidPrehospital: "tranexamic acid before hospital",
  mannitolBelowSbpTarget: "mannitol while SBP is under target",
  // Ventilation and tubes
  tidalMlPerKg: "breath volume",
  startRatePerMin: "breaths at the start",
  deadSpaceMlPerKg: "dead space",
  peepCmH2O: "PEEP",
  herniationRatePerMin: "breaths in herniation",
  childCuffedPlusMm: "child, cuffed: age / 4 plus",
  childUncuffedPlusMm: "child, uncuffed: age / 4 plus",
  childDepthPlusCm: "child, depth at the lip: age / 2 plus",
  infantMm: "infant",
  oneYearOldMm: "1 year old",
  sizeMm: "size",
  depthCm: "depth at the lip",
  spareStepMm: "spare tube smaller by",
  cuffCmH2O: "cuff pressure",
  // Timers and read-back
  questionTimeoutS: "open question becomes an unconfirmed entry after",
  staleAfterS: "reading is old after",
  standByS: "stand by holds prompts for",
  reannounceS: "alert said again",
  escalateS: "alert that nobody has acknowledged counts for more (low) or is said louder (high) after",
  alertCap: "alerts and prompts spoken",
  most: "at most",
  withinS: "within",
  keptForNew: "of these kept for new ones",
  alertPauseMaxS: "alerts can be paused for at most",
  conditions: "priority",
  neuroSign: "new sign of herniation",
  falling: "falling towards its target",
  recordNotSaved: "record not saved",
  microphoneLost: "microphone lost",
  fallingReadings: "readings that a fall needs",
  hrPerMin: "heart rate",
  high: "high priority",
  medium: "medium priority",
  low: "low priority",
  pressureEveryS: "pressure taken every",
  induction: "around induction",
  sedationDueS: "sedation due after the induction drug",
  herniationMeasuresS: "measures against herniation last",
  recheckEtco2S: "EtCO2 looked at again after a change of ventilator",
  recheckGasS: "blood gas after a change of ventilator",
  promptAgainS: "unanswered prompt said again",
  co2AfterTubeS: "EtCO2 asked for once the tube is in, after",
  attemptS: "length of an attempt said every",
  apnoeaEveryS: "length of the apnoea said every",
  neuroCheckEveryS: "pupils and score looked at every",
  fullSetEveryS: "every number taken every",
  afterTube: "once the tube is in",
  forS: "for",
  watch: "interval between sets",
  shortestS: "shortest",
  longestS: "longest",
  stretchBy: "after each good set longer by the factor",
  askBackOverPct: "given amount asked back when further from the plan than",
  consequence: "after a pressure, its mean against the target is said",
  // The file itself
  schema: "file format, number",
  drugNames: "drug names",
  co2: "carbon dioxide in",
};

/** Words of the file that are codes. */
const VALUE_WORDS: Readonly<Record<string, string>> = {
  example: "Example, not approved for patients",
  approved: "Approved by its owner",
  us: "United States",
  all: "all ages",
  muscleRelaxant: "muscle relaxant",
  localAnaesthetic: "local anaesthetic",
  relaxantReversal: "reversal of muscle relaxants",
  sodiumChloride: "sodium chloride",
  sodiumBicarbonate: "sodium bicarbonate",
  "if-action-differs": "only across a limit of action",
  prepare: "before the drugs are given",
  afterTube: "once the tube is in",
  rescue: "while herniation is treated",
  failedAirway: "when the airway has failed",
  beforeParalysis: "before paralysis",
  sinceTube: "since the tube went in",
  tubeConfirmed: "the tube is confirmed",
};

type Watched = VitalCode | "cpp" | "cppBound";

/** Stored units that people write in another way. */
const SHOWN_UNIT: Readonly<Record<string, string>> = { "mm[Hg]": "mmHg", Cel: "°C", "{score}": "", a: "years" };

/** "publishedFloorMmHg" → "published floor". */
const splitKey = (key: string): string =>
  key
    .slice(0, key.length - unitEnding(key).length)
    .replace(/(?<=[a-z\d])(?=[A-Z])/gu, " ")
    .toLowerCase();

const infoOf = (code: Watched) => {
  if (code === "cpp") return { label: "CPP", unit: VITALS.map.unit };
  return code === "cppBound" ? { label: "CPP at the lowest ICP assumed", unit: VITALS.map.unit } : VITALS[code];
};

/** The label of a vital, of an alert's value too: "EtCO2", "CPP". */
export const codeWords = (code: Watched): string => infoOf(code).label;

/** The unit of its stored values as people write it; empty for a score. */
export const codeUnit = (code: Watched): string => SHOWN_UNIT[infoOf(code).unit] ?? infoOf(code).unit;

export const valueWords = (value: string): string => VALUE_WORDS[value] ?? value;

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** "SBP, target" for the way to one entry. */
export function labelOf(path: readonly string[]): string {
  const words = path.map((key) => KEY_WORDS[key] ?? splitKey(key)).filter((word) => word !== "");
  return capital(words.join(", "));
}
