import { describe, expect, it } from "vitest";
import { defaultProtocol as protocol } from "../../src/protocol/defaultProtocol.ts";

const dosesOf = (id: string) => protocol.drugs.filter((drug) => drug.id === id).flatMap(({ doses }) => doses);

describe("names", () => {
  const spoken = [...protocol.drugs, ...protocol.osmotics].flatMap(({ id, spoken: forms }) =>
    forms.map((form) => ({ form, id })),
  );

  it("are plain words in lower case", () => {
    expect(spoken.filter(({ form }) => !/^[a-z]+(?: [a-z]+)*$/u.test(form))).toEqual([]);
  });

  it("mean one agent each", () => {
    const forms = spoken.map(({ form }) => form);
    expect(forms.filter((form, i) => forms.indexOf(form) !== i)).toEqual([]);
  });

  it.each(protocol.drugs)("of $id are spoken in both regions", ({ names, spoken: forms }) => {
    expect(forms).toContain(names.international);
    expect(forms).toContain(names.us);
  });

  it.each(protocol.drugs)("of $id: the key is the international one", ({ id, names }) =>
    expect(names.international).toBe(id),
  );

  it("differ by region where they must", () => {
    const differing = protocol.drugs.flatMap(({ names }) => (names.us === names.international ? [] : [names.us]));
    expect(differing).toEqual(["succinylcholine", "norepinephrine", "epinephrine", "phytonadione"]);
  });
});

it("marks as for after the tube the doses that say so, and no other", () => {
  const doses = [...protocol.drugs, ...protocol.osmotics].flatMap(({ id, doses: all }) => all.map((d) => ({ id, d })));
  const marked = doses.filter(({ d }) => d.afterTube);
  expect(marked.map(({ id, d }) => `${id} ${d.id}`)).toEqual(["fentanyl painRelief", "midazolam sedation"]);
  expect(marked).toEqual(doses.filter(({ d }) => d.purpose.includes("after intubation")));
});

describe("labels", () => {
  const words: Readonly<Record<string, string>> = { mcg: "micrograms", mg: "mg", g: "g", units: "units" };

  it("say the strength beside them", () => {
    const labels = protocol.drugs.flatMap(({ concentrations }) => concentrations);
    const wrong = labels.filter((c) => c.label !== `${c.amount} ${words[c.unit] ?? "?"} in ${c.volumeMl} mL`);
    expect(labels.length).toBeGreaterThan(30);
    expect(wrong).toEqual([]);
  });
});

/** By what is done with them. A reduced dose of a relaxant would leave a patient who moves and cannot breathe. */
describe("in shock", () => {
  const inShock = (id: string) =>
    dosesOf(id).flatMap(({ shock, usual }) => (shock === undefined ? [] : [shock.usual / usual]));

  it.each(["ketamine", "etomidate", "propofol", "fentanyl"])("%s is at most halved", (id) => {
    expect(inShock(id).length).toBeGreaterThan(0);
    expect(Math.max(...inShock(id))).toBeLessThanOrEqual(0.5);
  });

  it.each(["rocuronium", "suxamethonium"])("%s is not reduced", (id) => {
    expect(inShock(id).length).toBeGreaterThan(0);
    expect(Math.min(...inShock(id))).toBeGreaterThanOrEqual(1);
  });

  it("lidocaine alone is left out", () => {
    expect(protocol.drugs.filter(({ doses }) => doses.some((d) => d.omitInShock)).map(({ id }) => id)).toEqual([
      "lidocaine",
    ]);
  });
});

describe("caps", () => {
  const doses = [...protocol.drugs, ...protocol.osmotics].flatMap(({ id, doses: list }) =>
    list.map((d) => ({ id, d })),
  );

  it("stand at every dose", () => {
    expect(doses.filter(({ d }) => d.cap === undefined).map(({ id, d }) => `${id} ${d.id}`)).toEqual([]);
  });

  it("leave a 60 kg adult the usual dose, except where the source itself sets a lower limit", () => {
    const cut = doses.filter(({ d }) => d.population !== "child" && d.per === "kg" && (d.cap ?? 0) < d.usual * 60);
    expect(cut.map(({ id, d }) => `${id} ${d.id}`)).toEqual(["suxamethonium muscle"]);
  });
});

it("gives suxamethonium by weight without a gap or an overlap at 10 kg", () => {
  const children = dosesOf("suxamethonium").filter(({ population }) => population === "child");
  expect(children.map(({ fromKg, belowKg }) => [fromKg, belowKg])).toEqual([
    [10, undefined],
    [undefined, 10],
  ]);
});

it("never doses a child by ideal, lean or adjusted weight: those formulas are for adults", () => {
  const all = [...protocol.drugs, ...protocol.osmotics].flatMap(({ doses, infusions }) => [...doses, ...infusions]);
  const others = all.filter(
    ({ population, weight }) => population !== "adult" && weight !== undefined && weight !== "actual",
  );
  expect(others).toEqual([]);
});
