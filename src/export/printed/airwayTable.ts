import { showNumber } from "../../core/shownNumber.ts";
import type { AttemptOutcome } from "../../log/attempt.ts";
import { selectAttempts, selectFirstAttempt } from "../../log/attemptRecord.ts";
import type { RecordedCase } from "../recordedCase.ts";
import { markup, section, table, type Html } from "./html.ts";
import { showLength, type Times } from "./times.ts";

const OUTCOMES: Readonly<Record<AttemptOutcome, string>> = {
  running: "running at the end of the record",
  out: "no tube",
  tubeIn: "tube in, not confirmed",
  confirmed: "tube confirmed",
  tubeOut: "tube out again",
};
const JUDGED = { yes: "yes", no: "no", unknown: "not known" } as const;
const whole = (value: number | undefined): string => (value === undefined ? "–" : showNumber(value, 0));

/** Every attempt at the tube, and how the first one went. */
export function airwaySection(recorded: RecordedCase, times: Times, endMs: number): Html {
  const { state, protocol } = recorded;
  const attempts = selectAttempts(state, protocol, endMs);
  if (attempts.length === 0) return section("airway", "Airway", markup`<p>No attempt was called out.</p>`);
  const { firstPass, withoutLow } = selectFirstAttempt(state, protocol);
  const rows = attempts.map(({ attempt, lengthMs, lowest }) => [
    String(attempt.number),
    `${times.time(attempt.startedAtMs)}${attempt.implied ? ", not called" : ""}`,
    showLength(lengthMs),
    OUTCOMES[attempt.outcome],
    whole(lowest.spo2Pct),
    whole(lowest.sbpMmHg),
    whole(lowest.mapMmHg),
  ]);
  return section(
    "airway",
    "Airway",
    table(
      "Attempts, with the lowest values from two minutes before each",
      ["No.", "Began", "Length", "Outcome", "SpO2, %", "SBP, mmHg", "MAP, mmHg"],
      rows,
    ),
    markup`<p>First pass: ${JUDGED[firstPass]}. First pass without SpO2 or systolic under its limit: ${JUDGED[withoutLow]}.</p>`,
  );
}
