import { showAmount } from "../../core/shownNumber.ts";
import type { StepAnswer, StepValue } from "../../log/facts.ts";
import { isAfterTube } from "../../log/phase.ts";
import { placesOf, type ListId } from "../../log/steps/lists.ts";
import { answerOf } from "../../log/steps/openSteps.ts";
import { isSatisfied } from "../../log/steps/satisfied.ts";
import { ANSWERS, LISTS } from "../listWords.ts";
import type { RecordedCase } from "../recordedCase.ts";
import { markup, section, table, type Html, type Piece } from "./html.ts";
import type { Times } from "./times.ts";
import { capital } from "./words.ts";

/** What was waived must strike the eye. */
const answerText = (answer: StepAnswer): string => (answer === "waived" ? "WAIVED" : ANSWERS[answer]);

const showStepValue = ({ value, unit }: StepValue): string =>
  unit === "size" ? `size ${showAmount(value)}` : `${showAmount(value)} ${unit.replace("mcg", "micrograms")}`;

type Answered = {
  readonly answer: StepAnswer;
  readonly value?: StepValue | undefined;
  readonly reason?: string | undefined;
  readonly role?: string | undefined;
};

/** An answer with all that was said with it: "done, 8 mm", "WAIVED: no time". */
export const showAnswer = ({ answer, value, reason, role }: Answered): string =>
  [
    reason === undefined ? answerText(answer) : `${answerText(answer)}: ${reason}`,
    ...(value === undefined ? [] : [showStepValue(value)]),
    ...(role === undefined ? [] : [role]),
  ].join(", ");

/** The lists that counted in this case. */
function listsOf({ state }: RecordedCase): readonly ListId[] {
  const { rescue, failure } = state.care;
  return [
    "prepare",
    ...(isAfterTube(state) ? (["afterTube"] as const) : []),
    ...(rescue === undefined ? [] : (["rescue"] as const)),
    ...(failure === undefined ? [] : (["failedAirway"] as const)),
  ];
}

/**
 * Every step of these lists with its answer, as it stood at the end of the record: what the record itself answers by time
 * or by a fresh value is judged there too.
 */
export function stepSection(recorded: RecordedCase, times: Times, endMs: number): Html {
  const { state, protocol } = recorded;
  const rowOf = (place: ReturnType<typeof placesOf>[number]): readonly Piece[] => {
    const { step } = place;
    const answer = answerOf(state, place);
    const byRecord = isSatisfied(state, protocol, step, endMs) ? "by the record" : "open";
    return [
      step.killer ? markup`${capital(step.name)} <b>(critical)</b>` : capital(step.name),
      step.challenge,
      answer === undefined || (answer.answer === "later" && byRecord !== "open") ? byRecord : showAnswer(answer),
      answer === undefined ? "" : times.time(answer.atMs),
    ];
  };
  return section(
    "steps",
    "Steps",
    markup`<p>As they stood at the last entry. “By the record”: what was recorded answers it, nobody had to.</p>`,
    listsOf(recorded).map((list) =>
      table(LISTS[list], ["Step", "Challenge", "Answer", "Time"], placesOf(protocol, list).map(rowOf)),
    ),
  );
}
