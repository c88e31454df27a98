import type { ScreenView } from "../../src/app/screenView.ts";

/** Invented, for tests of the page alone: no patient, no protocol and no clinical advice stand behind it. */
export const exampleView: ScreenView = {
  caution:
    "Decision support and training aid, not a certified medical device. Local protocol and licensed clinicians decide. Check every dose against the label in the hand.",
  protocolText: "Example protocol, version 0.1, invented for tests",
  protocolWarning: "Invented, not approved for patients.",
  protocolNotice: undefined,
  saveText: "Saved on this device",
  saveFailed: false,
  hearing: { status: "listening", text: "Listening", mode: "open", holding: false, notice: "Too loud, invented." },
  lastHeard: { words: "blood pressure one ten over sixty", outcome: "recorded" },
  lastSpoken: "Pressure 110 over 60. MAP 77, 13 below the target of 90.",
  question: "Rate: fifteen, one five, or fifty, five zero?",
  headline: {
    mapText: "MAP 77 mmHg",
    deficitText: "13 below the target of 90",
    cppText: "CPP under 60 if ICP is over 17",
    met: false,
  },
  bar: {
    scaleMaxMmHg: 140,
    mapMmHg: 77,
    icp: { kind: "assumed", lowMmHg: 20, highMmHg: 30 },
    targetMmHg: 90,
    description: "MAP 77 mmHg. ICP assumed between 20 and 30 mmHg. Target MAP 90 mmHg.",
  },
  targetLines: ["Adult targets until an age is recorded, cause unknown.", "SBP 110, MAP 90, CPP 60 mmHg."],
  why: {
    text: "CPP 57 from MAP 77 and ICP 20, assumed. Target 60, invented.",
    lines: [
      { label: "CPP", text: "57 mmHg, assumed: MAP − ICP", sourceText: "cerebral perfusion pressure: invented" },
      { label: "MAP", text: "77 mmHg, computed", sourceText: "" },
      {
        label: "ICP",
        text: "20 mmHg, assumed, assumedIcpMmHg",
        sourceText: "invented (common practice; not read at the source)",
      },
    ],
  },
  tiles: [
    {
      id: "pressure",
      label: "Pressure, cuff",
      text: "110/60 mmHg",
      origin: "measured",
      ageText: "1 min ago",
      stale: false,
    },
    { id: "map", label: "MAP", text: "77 mmHg", origin: "computed", ageText: "1 min ago", stale: false },
    { id: "icp", label: "ICP", text: "20 to 30 mmHg", origin: "assumed", ageText: "", stale: false },
    { id: "spo2", label: "SpO2", text: "94 %", origin: "measured", ageText: "8 min ago", stale: true },
    { id: "etco2", label: "EtCO2", text: "not yet recorded", origin: "none", ageText: "", stale: false },
    { id: "hr", label: "Heart rate", text: "92 per minute", origin: "measured", ageText: "2 min ago", stale: false },
    { id: "gcs", label: "GCS", text: "E1 V2 M4", origin: "measured", ageText: "5 min ago", stale: false },
    { id: "glucose", label: "Glucose", text: "not yet recorded", origin: "none", ageText: "", stale: false },
  ],
  nextStep: { groupText: "Pressure", challenge: "Pressor infusion made up and connected?", killer: true },
  progressText: "4 of 12 answered",
  groups: [
    { id: "pressure", title: "Pressure", done: 2, total: 5 },
    { id: "oxygen", title: "Oxygen", done: 2, total: 4 },
    { id: "team", title: "Team", done: 0, total: 3 },
  ],
  alerts: [
    { id: "map", priority: "high", text: "MAP 77, 13 below target" },
    { id: "spo2", priority: "medium", text: "Oxygen reading is old" },
  ],
  settings: {
    engines: [
      { id: "built-in", label: "Built in, on the device", chosen: true },
      { id: "browser", label: "This browser's, may send sound away", chosen: false },
    ],
    consent: undefined,
    voices: [{ id: undefined, label: "Built in", chosen: true }],
  },
  hearMe: { running: undefined, profileText: "", notice: "" },
  phrases: ["blood pressure one ten over sixty", "status", "next", "say again", "correction"],
};

/** Invented: the first moments, with nothing recorded. */
export const emptyView: ScreenView = {
  ...exampleView,
  hearing: { status: "off", text: "Not listening", mode: "open", holding: false, notice: "" },
  lastHeard: undefined,
  lastSpoken: undefined,
  question: undefined,
  headline: { mapText: "MAP not yet recorded", deficitText: "Target 90 mmHg", cppText: "CPP unknown", met: false },
  bar: undefined,
  tiles: exampleView.tiles.map((tile) => ({
    ...tile,
    text: "not yet recorded",
    origin: "none",
    ageText: "",
    stale: false,
  })),
  alerts: [],
  groups: exampleView.groups.map((group) => ({ ...group, done: 0 })),
  progressText: "0 of 12 answered",
};
