import { describe, expect, it } from "vitest";
import { csvTables } from "../../src/export/csv/csvTables.ts";
import { collectionBundle } from "../../src/export/fhir/bundle.ts";
import Papa from "papaparse";
import { complaints } from "./fhir/judges.ts";
import { BEGAN_MS, playMoves, recordedFrom } from "./randomCase.ts";

// A pressure and an ICP; three minutes later the ICP is corrected by name. Invented.
const say = (words: string) => ({ kind: "say", words, by: "typed", then: undefined }) as const;
const recorded = recordedFrom(
  playMoves([
    say("map ninety"),
    say("icp five zero"),
    { kind: "wait", seconds: 180 },
    say("correct the icp of fifty to one five"),
    say("affirm"),
  ]),
);

describe("an ICP that was corrected minutes later", () => {
  it("stands in the table at the time it was taken, with the perfusion pressure; the struck one has none", () => {
    const [vitals] = csvTables(recorded, "UTC");
    const { data } = Papa.parse<Record<string, string>>(vitals!.text, { header: true, skipEmptyLines: true });
    const of = (row: Record<string, string>, name: string) =>
      Object.entries(row).find(([header]) => header.toLowerCase().startsWith(name))?.[1];
    const began = new Date(BEGAN_MS).toISOString().slice(0, 19);
    expect(
      data.map((row) => [of(row, "icp"), of(row, "status"), of(row, "cpp"), of(row, "time")?.slice(0, 19)]),
    ).toEqual([
      ["", "recorded", "", began],
      ["50", "struck", "", began],
      ["15", "recorded", "75", began],
    ]);
  });

  it("is what the perfusion pressure of the bundle was derived from", () => {
    const bundle = collectionBundle(recorded, BEGAN_MS + 200_000);
    expect(complaints(bundle)).toEqual([]);
    const resources = (bundle.entry ?? []).map(({ fullUrl, resource }) => ({ fullUrl, resource }));
    const cpps = resources.flatMap(({ resource }) =>
      resource?.resourceType === "Observation" && /perfusion/iu.test(JSON.stringify(resource.code)) ? [resource] : [],
    );
    expect(cpps.map(({ status, valueQuantity }) => [status, valueQuantity?.value])).toEqual([["final", 75]]);
    const sources = (cpps[0]?.derivedFrom ?? []).map(({ reference }) =>
      resources.find(({ fullUrl }) => fullUrl === reference),
    );
    expect(
      sources.map(
        (source) =>
          source?.resource?.resourceType === "Observation" && [
            source.resource.status,
            source.resource.valueQuantity?.value,
          ],
      ),
    ).toEqual(expect.arrayContaining([["final", 15]]));
    expect(JSON.stringify(sources)).not.toContain("entered-in-error");
  });
});
