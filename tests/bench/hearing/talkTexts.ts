import type { AppContext } from "../../../src/app/context.ts";
import { normalise } from "../../../src/language/normalise/normalise.ts";
import { understand } from "../../../src/language/understand/understand.ts";
import { NEAR_THE_LANGUAGE, TALK } from "../phrases.ts";
import type { Random } from "../random.ts";
import { createGrammarWalk } from "./walkGrammar.ts";

/** Talk of crews, wards and the road, none of it for the app. Invented; numbers and clinical words on purpose. */
const TALK_GRAMMAR = `#JSGF V1.0;
grammar talk;
public <talk> = <request> | <told> | <plan> | <question> | <remark> | <family> | <numbers>;
<who> = you | somebody | one of you | the driver | the nurse | your partner | the student;
<thing> = the bag | the blanket | the stretcher | the radio | the window | the light | the monitor | the cable
  | the ramp | that strap | the splint | the torch | her glasses | his phone | the paperwork | the oxygen cylinder;
<place> = by the door | on the floor | behind the seat | over there | under his arm | next to me | in the front
  | on the left side | at the foot of the bed | outside;
<do> = hold <thing> | pass me <thing> | move <thing> | leave <thing> <place> | put <thing> <place> | look for <thing>
  | turn off <thing> | check <thing> again | sign for <thing>;
<n> = two | three | four | five | six | seven | eight | nine | ten | twelve | fifteen | twenty | thirty | forty;
<unit> = minutes | miles | people | hours | beds | bags | metres | years;
<request> = (can | could | would) <who> <do> [please] | please <do> [for a moment] | <do> and then <do>;
<told> = (they | she | he | dispatch | the family) (said | told me | thought) (it was | there were | we had | he had)
  (about | nearly | more than | only) <n> <unit> [ago | away | left];
<plan> = (we are | they are | i am) (going | coming | turning | waiting | stuck) (round the back | at the lights
  | in the traffic | for the lift | for the other crew | to the north entrance | on the ring road)
  [for <n> <unit> | in a moment | i think];
<question> = (did | has | will) (anyone | somebody | she | he) (call | see | tell | find | ask) (his wife | the hospital
  | the other crew | her mother | the police | my helmet | the keys) [yet | before we left | this morning];
<remark> = (his | her | the) (pressure | colour | breathing | pulse | sugar | head | heart rate)
  (looked | seemed | was | is getting) (better | worse | fine | low | a bit fast | the same)
  (when we got here | a while ago | in the house | to me | than before);
<family> = (my | his | her) (daughter | son | mother | neighbour | brother) (is | was) <n> (last | next | this) (week | month | year)
  [and lives <n> <unit> from here];
<numbers> = (bed | room | bay | level | gate | unit | car) <n> (is | was) (free | full | closed | on the left | not ready yet)
  [until half past <n>];
`;

const walk = createGrammarWalk({ talk: TALK_GRAMMAR }, "talk");

/** Is it outside what an open case understands? */
export const isOutside = ({ context }: { readonly context: AppContext }, words: string): boolean =>
  understand(context.grammars.of("open"), normalise(words)).kind === "none";

/** @param isTalk is it outside the language? What the app does understand is no talk for this purpose. */
export function makeTalk(count: number, isTalk: (words: string) => boolean, random: Random): readonly string[] {
  const talk = new Set(TALK.filter(isTalk));
  while (talk.size < count) {
    const words = walk.words("talk", "talk", random);
    if (isTalk(words)) talk.add(words);
  }
  return random.sample([...talk], count);
}

/** Half said, or said in a way that the language does not hold: hardest to leave alone. */
export const nearTheLanguage = (isTalk: (words: string) => boolean): readonly string[] =>
  NEAR_THE_LANGUAGE.filter(isTalk);
