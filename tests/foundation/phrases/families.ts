/** One line of a phrase table: a rule of a grammar file, and what saying it does. */
export type PhraseRow = readonly [file: string, rule: string, does: string];

/** What is said, in the order of the job. Every rule of the grammars that carries a meaning stands in one of them. */
export const PHRASE_FAMILIES: readonly { readonly title: string; readonly rows: readonly PhraseRow[] }[] = [
  {
    title: "Readings",
    rows: [
      ["vitals", "pressure", "a pressure, with its method and site; the mean is worked out"],
      ["vitals", "mean", "a measured mean pressure"],
      ["vitals", "after", "after a pressure: how, where, at which level it was taken"],
      ["vitals", "heartRate", "heart rate"],
      ["vitals", "breaths", "breathing rate"],
      ["vitals", "saturation", "oxygen saturation"],
      ["vitals", "endTidal", "end-tidal CO2 in either unit"],
      ["vitals", "icp", "a measured intracranial pressure, with the level of its zero"],
      ["vitals", "temperature", "temperature and its site"],
      ["vitals", "glucose", "glucose in either unit"],
      ["vitals", "gcs", "coma scale by part"],
      ["vitals", "pupils", "pupils by side"],
      ["restart", "restart", "a value broken off and said anew"],
    ],
  },
  {
    title: "The patient",
    rows: [
      ["vitals", "weight", "weight; estimated where it was said to be"],
      ["vitals", "height", "height"],
      ["vitals", "age", "age: the targets of that age count"],
      ["vitals", "sex", "sex"],
      ["vitals", "cause", "why pressure is raised"],
      ["vitals", "herniation", "herniation suspected: asks for the rescue; or none"],
    ],
  },
  {
    title: "Phases, the list, the attempt, clocks, rescue",
    rows: [
      ["course", "phase", "the phase of the case; “disregard” takes it back"],
      ["course", "list", "reads the list by itself, the short pass, what is left, the failed airway"],
      ["course", "waive", "passes over the step called, or the critical ones just warned of"],
      ["course", "airway", "the attempt, with its number and its time"],
      ["course", "clock", "clocks: those running, and those started by voice"],
      ["course", "rescue", "time-limited measures against herniation, once affirmed"],
      ["course", "tell", "which tube, how to ventilate, how the attempts went"],
      ["course", "help", "what can be said"],
    ],
  },
  {
    title: "Answers to the preparation",
    rows: [
      ["preparation", "bare", "answers the step last called"],
      ["preparation", "any", "after the name of a step, in any order"],
      ["preparation", "patient", "patient"],
      ["preparation", "drugs", "drugs"],
      ["preparation", "equipment", "equipment"],
      ["preparation", "team", "team: by role, never by name"],
      ["preparation", "plan", "plan"],
    ],
  },
  {
    title: "Answers once the tube is confirmed, and at any time",
    rows: [
      ["after", "named", "after the tube"],
      ["after", "anyTime", "rescue and failed airway"],
    ],
  },
  {
    title: "Drugs, fluids, oxygen",
    rows: [
      ["drugs", "fullName", "the drugs it knows, each also by its other national name"],
      ["drugs", "shortName", "short names, only inside a phrase"],
      ["drugs", "doseQuestion", "the dose of that drug for this patient; then the concentration in the hand is asked"],
      ["care", "strengthOf", "the concentration in the hand: read back two ways; then the volume"],
      ["care", "given", "given: read back, compared with the plan, recorded once affirmed"],
      ["care", "howMuch", "an infusion worked out; records nothing"],
      ["care", "infusion", "an infusion starts, changes, stops: once affirmed"],
      ["care", "make", "a dilution, spoken one step at a time"],
      ["care", "total", "what was given in all"],
      ["care", "equivalents", "how much of the other osmotic agents has the same load"],
      ["care", "fluid", "fluid or blood: once affirmed, with the total for each kilogram"],
      ["care", "cylinder", "how long the oxygen lasts"],
      ["drugs", "whyQuestion", "how a number came about"],
    ],
  },
  {
    title: "Alerts and the voice",
    rows: [
      ["talk", "acknowledge", "somebody has it: the alert said last, or all of one cause; the others go on"],
      ["talk", "pause", "alerts held for up to ten minutes, high ones never; and on again"],
      ["talk", "level", "how much is said; alerts, questions, drugs and what was asked for always are"],
      ["talk", "voice", "two steps each way from the usual voice"],
      ["talk", "howOld", "the age of a number, the one said last or by name, with the number"],
    ],
  },
  {
    title: "Control",
    rows: [
      ["control", "command", "commands"],
      ["case", "corrected", "the last reading is struck out and replaced"],
      ["strike", "one", "an entry from before: named with its age, struck once affirmed; it stays in the record"],
      ["strike", "anew", "the number of a reading from before, in its place and at its time, once affirmed"],
      ["handover", "handover", "the handover; “go on” says the rest, or goes on where it was cut off"],
    ],
  },
  {
    title: "Answers to a question",
    rows: [
      ["control", "verdict", "yes or no"],
      ["case", "bareNumber", "the number anew"],
      ["control", "unit", "which unit"],
      ["care", "answer", "what a question about a drug asks for"],
      ["care", "doseUnit", "units of an amount"],
      ["care", "rateUnit", "units of a rate"],
    ],
  },
];
