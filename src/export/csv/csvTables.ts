import type { RecordedCase } from "../recordedCase.ts";
import { drugsTable } from "./drugsTable.ts";
import { eventsTable } from "./eventsTable.ts";
import { vitalsTable } from "./vitalsTable.ts";
import { writeCsv } from "./writeCsv.ts";

/** The three tables of a case as CSV, by their names. @param zone IANA name of the time zone of their times. */
export const csvTables = (
  recorded: RecordedCase,
  zone: string,
): readonly { readonly name: string; readonly text: string }[] =>
  Object.entries({ vitals: vitalsTable, drugs: drugsTable, events: eventsTable }).map(([name, table]) => ({
    name,
    text: writeCsv(table(recorded, zone)),
  }));
