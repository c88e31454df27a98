import { describe, expect, it } from "vitest";
import { selectFinding, selectIcp, selectLatest, selectMap, selectStandingAlerts } from "../../src/log/selectors.ts";
import { defaultProtocol } from "../../src/protocol/defaultProtocol.ts";
import { CaseBuilder } from "./caseBuilder.ts";

type Row = {
  readonly name: string;
  readonly play: (c: CaseBuilder) => void;
  readonly map: { mapMmHg: number; kind: "measured" | "computed"; atMs: number; disagreesByMmHg?: number } | undefined;
};

const ROWS: readonly Row[] = [
  { name: "none before the first reading", play: () => undefined, map: undefined },
  {
    name: "computed from a pair",
    play: (c) => c.at(5).say({ sbp: 120, dbp: 60 }),
    map: { mapMmHg: 80, kind: "computed", atMs: 5000 },
  },
  {
    name: "the measured mean of the same reading wins",
    play: (c) => c.say({ sbp: 120, dbp: 60, map: 84 }),
    map: { mapMmHg: 84, kind: "measured", atMs: 0 },
  },
  {
    name: "a disagreement over 10 is stated",
    play: (c) => c.say({ sbp: 120, dbp: 60, map: 100 }),
    map: { mapMmHg: 100, kind: "measured", atMs: 0, disagreesByMmHg: -20 },
  },
  {
    name: "a newer measured mean wins over an older pair, and does not disagree with it",
    play: (c) => {
      c.say({ sbp: 120, dbp: 60 });
      c.at(60).say({ map: 95 });
    },
    map: { mapMmHg: 95, kind: "measured", atMs: 60_000 },
  },
  {
    name: "a newer pair wins over an older measured mean",
    play: (c) => {
      c.say({ map: 95 });
      c.at(60).say({ sbp: 90, dbp: 45 });
    },
    map: { mapMmHg: 60, kind: "computed", atMs: 60_000 },
  },
  {
    name: "also within the same millisecond, what was said last is newer",
    play: (c) => {
      c.say({ map: 95 });
      c.say({ sbp: 90, dbp: 45 });
    },
    map: { mapMmHg: 60, kind: "computed", atMs: 0 },
  },
  {
    name: "half a pressure has no mean",
    play: (c) => c.say({ sbp: 120 }),
    map: undefined,
  },
  {
    name: "two halves said apart but close make one pressure, as old as its older half",
    play: (c) => {
      c.say({ sbp: 120 });
      c.at(10).say({ dbp: 60 });
    },
    map: { mapMmHg: 80, kind: "computed", atMs: 0 },
  },
  {
    name: "two halves ten minutes apart do not",
    play: (c) => {
      c.say({ dbp: 60 });
      c.at(600).say({ sbp: 120 });
    },
    map: undefined,
  },
  {
    name: "a palpated systolic takes no diastolic from anywhere",
    play: (c) => {
      c.say({ dbp: 50 });
      c.at(10).say({ sbp: 80 }, "palpated");
    },
    map: undefined,
  },
  {
    name: "a newer systolic does not take the diastolic of an older pair: that mean is overtaken",
    play: (c) => {
      c.say({ sbp: 120, dbp: 60 });
      c.at(60).say({ sbp: 85 });
    },
    map: undefined,
  },
  {
    name: "a newer systolic near the old one leaves the mean standing, with its own age",
    play: (c) => {
      c.say({ sbp: 120, dbp: 60 });
      c.at(60).say({ sbp: 118 });
    },
    map: { mapMmHg: 80, kind: "computed", atMs: 0 },
  },
  {
    name: "a newer systolic at or under the measured mean overtakes it",
    play: (c) => {
      c.say({ map: 84 });
      c.at(60).say({ sbp: 80 });
    },
    map: undefined,
  },
  {
    name: "a struck pair gives way to the one before",
    play: (c) => {
      c.say({ sbp: 120, dbp: 60 });
      c.strike(...c.at(60).say({ sbp: 80, dbp: 40 }));
    },
    map: { mapMmHg: 80, kind: "computed", atMs: 0 },
  },
  {
    name: "a corrected diastolic completes the systolic it was said with",
    play: (c) => {
      const [, dbp] = c.say({ sbp: 120, dbp: 90 });
      c.at(5).strike(dbp ?? "");
      c.say({ dbp: 60 });
    },
    map: { mapMmHg: 80, kind: "computed", atMs: 0 },
  },
];

describe("the mean that counts now", () => {
  it.each(ROWS)("$name", ({ play, map }) => {
    const c = new CaseBuilder();
    play(c);
    // Nothing was said of its level in any of these: that is the protocol's.
    expect(selectMap(c.state, defaultProtocol)).toEqual(map && { level: "heart", ...map });
  });
});

describe("what the protocol says of two pressures", () => {
  const { pressures } = defaultProtocol;
  const INVENTED = { reference: "invented", kind: "common-practice", primaryRead: false } as const;

  it("how close two halves must be", () => {
    const protocol = {
      ...defaultProtocol,
      pressures: { ...pressures, halvesWithinS: { value: 9, source: INVENTED } },
    };
    const c = new CaseBuilder();
    c.say({ sbp: 120 });
    c.at(10).say({ dbp: 60 });
    expect(selectMap(c.state, protocol)).toBeUndefined();
    expect(selectMap(c.state, defaultProtocol)?.mapMmHg).toBe(80);
  });

  it("from where on they disagree", () => {
    const protocol = { ...defaultProtocol, pressures: { ...pressures, apartMmHg: { value: 3, source: INVENTED } } };
    const c = new CaseBuilder();
    c.say({ sbp: 120, dbp: 60, map: 84 });
    expect(selectMap(c.state, protocol)?.disagreesByMmHg).toBe(-4);
    expect(selectMap(c.state, defaultProtocol)?.disagreesByMmHg).toBeUndefined();
  });
});

describe("latest values and findings", () => {
  it("the newest is the latest", () => {
    const c = new CaseBuilder();
    c.say({ hr: 90 });
    c.say({ hr: 110 });
    expect(selectLatest(c.state, "hr")?.value).toBe(110);
    expect(selectLatest(c.state, "rr")).toBeUndefined();
  });
  it("a finding holds until a number is recorded after it", () => {
    const c = new CaseBuilder();
    c.say({ gcsVerbal: 2 });
    c.find({ code: "gcsVerbal", finding: "not-testable" });
    expect(selectFinding(c.state, "gcsVerbal")).toMatchObject({ finding: "not-testable" });
    c.say({ gcsVerbal: 4 });
    expect(selectFinding(c.state, "gcsVerbal")).toBeUndefined();
  });
  it("ICP is there only when it was said", () => {
    const c = new CaseBuilder();
    expect(selectIcp(c.state)).toBeUndefined();
    c.at(3).say({ icp: 22 });
    expect(selectIcp(c.state)).toEqual({ icpMmHg: 22, atMs: 3000 });
  });
  it("standing alerts come the most pressing first, then the oldest", () => {
    const c = new CaseBuilder();
    for (const [alertId, priority] of [
      ["a", "medium"],
      ["b", "high"],
      ["c", "medium"],
      ["d", "high"],
    ] as const)
      c.add({ type: "alert.raised", alertId, priority, value: 1 });
    expect(selectStandingAlerts(c.state).map((alert) => alert.alertId)).toEqual(["b", "d", "a", "c"]);
  });
});
