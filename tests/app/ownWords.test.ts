import { expect, it } from "vitest";
import { normalise } from "../../src/language/normalise/normalise.ts";
import { understand } from "../../src/language/understand/understand.ts";
import { compiled } from "../phrases/caseGrammars.ts";
import { meantText } from "../phrases/meantText.ts";
import { ASKED_CASES } from "./askedRows.ts";
import { TALK_CASES } from "./talkRows.ts";

const asked = compiled("case", "asked");

const replies = [TALK_CASES, ASKED_CASES].flatMap((cases) =>
  Object.values(cases)
    .flat()
    .map(([, , , reply]) => reply),
);
/** A pause may end an utterance: each sentence can be heard alone. */
const sentencesSaid = [...new Set(replies.flatMap((reply) => reply.split(/(?<=[.?]) /u)))];
/** Carried out twice it would go further; "alerts only" or "usual voice" once more changes nothing. */
const GOES_FURTHER = /^(?:voice change=(?!usual)|acknowledge|pauseAlerts|do disregard)/u;

it.each(sentencesSaid)("our own %j, heard by ourselves, is no command that goes further each time", (said) => {
  expect(meantText(understand(asked, normalise(said)))).not.toMatch(GOES_FURTHER);
});
