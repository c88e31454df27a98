import { VITALS } from "../../core/vitals.ts";
import type { StandingAlert } from "../../rules/alertsDue.ts";

/** What an alert watches, in a word or two: "MAP", "sats". */
export const sayWatched = (code: StandingAlert["code"]): string => (code === "cpp" ? "CPP" : VITALS[code].spokenName);
