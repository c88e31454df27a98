import { showWatched } from "../../../src/language/sentences/alertNumber.ts";
import { showSpan } from "../../../src/language/sentences/clock.ts";
import { sayPhase } from "../../../src/language/sentences/course.ts";
import { showValue } from "../../../src/language/sentences/vital.ts";
import { limitsOf } from "../../../src/protocol/alertLimits.ts";
import { defaultProtocol as protocol } from "../../../src/protocol/defaultProtocol.ts";
import type { AlertRule, WatchedCode } from "../../../src/protocol/protocol.ts";
import { resolveTargets } from "../../../src/protocol/resolveTargets.ts";
import { CAUSE_OF_CODE, CAUSE_OF_PROMPT } from "../../../src/rules/alerts/cause.ts";
import type { Prompt } from "../../../src/rules/prompts/prompt.ts";
import { HEARD_WORDS } from "./heardWords.ts";
import { PROMPT_ROWS } from "./promptRows.ts";

export const ALERTS_START = "<!-- alerts: written by tests/foundation/phrases/writeTables.ts -->";
export const ALERTS_END = "<!-- end of alerts -->";

const { timers, trend, conditions } = protocol;
const seconds = ({ value }: { readonly value: number }): string => showSpan(value * 1000);

/** The limits of an adult; of the first cause that has a limit at all. */
export function limitsFor({ code, side }: AlertRule) {
  const [first] = protocol.targets.causes
    .map(({ id: cause }) =>
      limitsOf(resolveTargets(protocol, { ageA: undefined, cause, herniating: false }), code, side),
    )
    .filter(({ target }) => target !== undefined);
  if (first === undefined) throw new Error(`no patient has a limit for ${code} ${side}`);
  return first;
}

/** "90 mmHg", "37.7 °C", as the screen gives them. */
const amount = (code: WatchedCode, value: number): string =>
  code === "cpp" || code === "cppBound" ? showValue("map", value) : showValue(code, value);

function limitRow(rule: AlertRule): readonly string[] {
  const { id, code, side, bands, phases, clearBy, clearReadings, worseBy } = rule;
  const limits = limitsFor(rule);
  const numberAt = (at: AlertRule["bands"][number]["at"]): number => {
    const limit = typeof at === "number" ? at : limits[at];
    if (limit === undefined) throw new Error(`${id} has no limit ${at}`);
    return limit;
  };
  const [mildest] = bands;
  if (mildest === undefined) throw new Error(`${id} has no band`);
  const raised = bands.map(({ at, inclusive, priority }) => {
    const name = at === "target" ? "target, " : "";
    return `${priority} ${inclusive ? "at or " : ""}${side} ${name}${amount(code, numberAt(at))}`;
  });
  const where = phases === undefined ? "" : `; only in these phases: ${phases.map(phaseName).join(", ")}`;
  const clear = numberAt(mildest.at) + (side === "under" ? clearBy : -clearBy);
  const watched = code === "cppBound" ? "CPP at the lowest ICP assumed" : showWatched(code);
  return [
    `${watched} ${side === "under" ? "low" : "high"} (\`${id}\`)`,
    `${raised.join(", ")}${where}`,
    `${clearReadings} readings in a row at ${amount(code, clear)} or ${side === "under" ? "more" : "less"}`,
    `a worse priority, or ${amount(code, worseBy)} worse`,
    "by its priority",
    `"${HEARD_WORDS[CAUSE_OF_CODE[code]]}"`,
  ];
}

const phaseName = (phase: NonNullable<AlertRule["phases"]>[number]): string =>
  sayPhase(phase)
    .replace(/ phase$/i, "")
    .toLowerCase();

const otherRows = (): readonly (readonly string[])[] => [
  [
    "A pressure or sats falling (`…:falling`)",
    `${conditions.falling.value}: still at target after ${trend.fallingReadings.value} readings within ${seconds(trend.windowS)}, but under it before the pressure is next due if it goes on`,
    "it falls no more, is under target (which has an alert of its own), or was not taken for as long",
    "it falls further, by as much as makes its low alert worse",
    "by its priority",
    `"${HEARD_WORDS.pressure}", "${HEARD_WORDS.oxygen}"`,
  ],
  [
    "A sign of herniation (`neuroSign`)",
    `${conditions.neuroSign.value}: a pupil fixed, wide or unequal, motor score 1 or 2, GCS fallen by ${trend.gcsFall.points.value}${trend.cushing.enabled.value ? ", pressure up with the rate down" : ""}`,
    "the sign is gone, herniation is called, or the rescue starts",
    "one more sign",
    "by its priority",
    `"${HEARD_WORDS.brain}"`,
  ],
  [
    "Record not saved (`recordNotSaved`)",
    `${conditions.recordNotSaved.value}: an entry could not be stored`,
    "it is stored",
    "–",
    "by its priority",
    `"${HEARD_WORDS.device}"`,
  ],
  [
    "Microphone lost (`microphoneLost`)",
    `${conditions.microphoneLost.value}: nobody can be heard`,
    "it listens again",
    "–",
    "by its priority",
    `"${HEARD_WORDS.device}", typed`,
  ],
];

function promptRow(promptId: Prompt["promptId"]): readonly string[] {
  const { name, priorities, repeats, calledOut, raised, cleared } = PROMPT_ROWS[promptId];
  return [
    `${name} (\`${promptId}\`)`,
    `${priorities.join(" or ")}: ${raised(protocol)}`,
    cleared,
    "–",
    repeats ? "as a prompt of its priority" : calledOut === true ? "a time that is called out" : "once",
    repeats ? `"${HEARD_WORDS[CAUSE_OF_PROMPT[promptId]]}"` : "–",
  ];
}

const table = (head: readonly string[], rows: readonly (readonly string[])[]): string =>
  [head, head.map(() => "---"), ...rows].map((cells) => `| ${cells.join(" | ")} |`).join("\n");

const againTable = (): string =>
  table(
    ["Priority", "An alert is said again", "A prompt is said again"],
    (["high", "medium", "low"] as const).map((priority) => {
      const every = `every ${seconds(timers.reannounceS[priority])}`;
      const alerts = {
        high: `after ${seconds(timers.escalateS.high)}, then ${every}, louder`,
        medium: every,
        low: `${every}; one that stands for ${seconds(timers.escalateS.low)} becomes medium`,
      };
      return [priority, alerts[priority], `every ${seconds(timers.promptAgainS[priority])}`];
    }),
  );

const limits = (): string =>
  [
    `At most ${timers.alertCap.most.value} alerts and prompts are spoken within ${seconds(timers.alertCap.withinS)}; the last ${timers.alertCap.keptForNew.value} places are kept for what is new and pressing.`,
    `Alerts can be paused for ${seconds(timers.alertPauseMaxS)} at most; "pause alerts" alone and "stand by" last ${seconds(timers.standByS)}.`,
  ].join(" ");

const HEAD = ["Alert or prompt", "Raised when", "Cleared when", "Said at once when", "Said again", "Taken on by"];

/** The numbers of alerts and prompts, and the table of reset and latching, as they stand in the README. */
export function alertTables(): string {
  const prompts = Object.keys(PROMPT_ROWS) as Prompt["promptId"][];
  const rows = [...protocol.alerts.map(limitRow), ...otherRows(), ...prompts.map(promptRow)].map(
    ([name = "", raised = "", cleared = "", ...rest]) => [name, raised, cleared, "no", ...rest],
  );
  const [name = "", raised = "", cleared = "", ...rest] = HEAD;
  const whole = table([name, raised, cleared, "Latches", ...rest], rows);
  const inside = [
    limits(),
    againTable(),
    "<details>",
    "<summary>Every alert and prompt: when it is raised, cleared and said again</summary>",
    whole,
    "</details>",
  ];
  return [ALERTS_START, ...inside, ALERTS_END].join("\n\n");
}
