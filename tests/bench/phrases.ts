import type { GrammarState } from "../../src/app/ports.ts";
import { CAUSE_ROWS } from "../phrases/causeRows.ts";
import { ASKED_ROWS, CONTROL_ROWS } from "../phrases/controlRows.ts";
import { DRUG_AND_WHY_ROWS } from "../phrases/drugAndWhyRows.ts";
import { NEURO_AND_BODY_ROWS } from "../phrases/neuroAndBodyRows.ts";
import { NOT_UNDERSTOOD } from "../phrases/notUnderstoodRows.ts";
import { PREPARATION_ROWS } from "../phrases/preparationRows.ts";
import { PRESSURE_ROWS } from "../phrases/pressureRows.ts";
import { VITAL_ROWS } from "../phrases/vitalRows.ts";

export type Family = "vitals" | "commands" | "doses and reasons" | "step answers" | "answers to a question";
export type Phrase = {
  readonly family: Family;
  readonly words: string;
  /** In the notation of the phrase tables. */
  readonly meant: string;
  readonly state: GrammarState;
  /** Typed lines that bring the case to where this is said. */
  readonly before: readonly string[];
};

/** A step waits for its answer, and there are readings to correct. */
const OPEN_CASE = [
  "next",
  "one twenty over seventy rate seventy five sats ninety eight left pupil four brisk",
  "weight sixty six kilos",
  "rate eighty two",
];
const NUMBER_ASKED = ["i c p fifteen"];
const UNIT_ASKED = ["end tidal five"];

const isSpoken = (words: string): boolean => /^[a-z', ]+$/.test(words);
const plain = (words: string): string => words.replaceAll(",", "");

const family = (rows: readonly (readonly [string, string])[], name: Family): readonly Phrase[] =>
  rows
    .filter(([said]) => isSpoken(said))
    .map(([said, meant]) => ({ family: name, words: plain(said), meant, state: "open", before: OPEN_CASE }));

const isAnswer = (meant: string): boolean => /^(do (affirm|negative)|number (15|50)|unit (kPa|mmHg))$/.test(meant);

const answers: readonly Phrase[] = ASKED_ROWS.filter(([said, meant]) => isSpoken(said) && isAnswer(meant)).map(
  ([said, meant]) => ({
    family: "answers to a question",
    words: plain(said),
    meant,
    state: "asked",
    before: meant.startsWith("unit") ? UNIT_ASKED : NUMBER_ASKED,
  }),
);

/** Every row of the phrase tables that can be spoken as it is written (words only) and is understood. */
export const PHRASES: readonly Phrase[] = [
  ...family([...PRESSURE_ROWS, ...VITAL_ROWS, ...NEURO_AND_BODY_ROWS], "vitals"),
  ...family(CAUSE_ROWS, "vitals"),
  ...family(CONTROL_ROWS, "commands"),
  ...family(
    DRUG_AND_WHY_ROWS.filter(([, meant]) => meant !== "-"),
    "doses and reasons",
  ),
  ...family(PREPARATION_ROWS, "step answers"),
  ...answers,
];

const ORDINARY = ["ordinary talk", "instructions and questions to others", "people", "news"];

const notUnderstood = (isWanted: (name: string) => boolean): readonly string[] =>
  Object.entries(NOT_UNDERSTOOD)
    .filter(([name]) => isWanted(name))
    .flatMap(([, sayings]) => sayings)
    .filter((said) => isSpoken(said) && said.trim() !== "");

/** Half said, or said in a way that the language does not hold: must change nothing, though it sounds like the language. */
export const NEAR_THE_LANGUAGE: readonly string[] = notUnderstood((name) => !ORDINARY.includes(name));

/** Talk of a room, a road and the news that must change nothing: the phrase tables', and longer sentences. Invented. */
export const TALK: readonly string[] = [
  ...notUnderstood((name) => ORDINARY.includes(name)),
  "did anyone call the receiving hospital yet",
  "we need to move him before the traffic gets worse",
  "she was found at the bottom of the stairs by her neighbour",
  "put the monitor where i can see it please",
  "the road is closed so we are going round by the bridge",
  "somebody take the handbag and give it to her daughter",
  "his pressure was fine when the first crew got there",
  "i think the rate is coming down a little",
  "can you open the window it is very warm in here",
  "they said about forty minutes but it felt like an hour",
  "let me know when you are happy with the picture on the screen",
  "he takes something for his heart but nobody knows the name",
  "we had two of these last week and both did well",
  "mind the cable on the floor behind you",
  "who is driving back after this one",
  "the next bed is free in an hour they told me",
  "keep an eye on the sats while i get the tube",
  "hold his head just like that and do not let go",
  "we will talk about it later when it is quiet",
  "there is nothing left in the bag we should stop at the shop",
  "the match is on tonight and i am going to miss it again",
  "all done here thank you you can close the door",
  "i have eighty pounds in my pocket and no card",
  "ring me on four five nine two six when you arrive",
];
