import { writeFileSync, mkdirSync } from "node:fs";
import fc from "fast-check";
import { Fhir } from "fhir";
import { collectionBundle, documentBundle } from "../../src/export/fhir/bundle.ts";
import { printedRecord } from "../../src/export/printed/printedRecord.ts";
import { playMoves, randomMoves, recordedFrom } from "./randomCase.ts";
const out="/tmp/fhirscratch/bundles"; mkdirSync(out,{recursive:true});
let n=0;
for (const [i,moves] of fc.sample(randomMoves,{numRuns:Number(process.argv[2]??50),seed:77}).entries()) {
  const facts=playMoves(moves); const r=recordedFrom(facts,i%5===0);
  const c=collectionBundle(r,1_900_000_000_000), d=documentBundle(r,1_900_000_000_000);
  writeFileSync(`${out}/${i}-c.json`,JSON.stringify(c)); writeFileSync(`${out}/${i}-d.json`,JSON.stringify(d));
  writeFileSync(`${out}/${i}.html`,printedRecord(r,{nowMs:1_900_000_000_000,zone:"Europe/London"}));
  writeFileSync(`${out}/${i}-d.xml`,new Fhir().objToXml(d));
  n++;
}
console.log(n);
