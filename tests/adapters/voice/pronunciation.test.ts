import { beforeAll, describe, expect, it } from "vitest";
import { runFlite, WAV_PATH } from "../../../src/adapters/voice/fliteProgram.ts";
import { respell } from "../../../src/adapters/voice/respell.ts";
import { DEFAULT_VOICE } from "../../../src/adapters/voice/synthesise.ts";
import { defaultProtocol } from "../../../src/protocol/defaultProtocol.ts";
import { fliteWasm } from "./flite.ts";

let program: WebAssembly.Module;
beforeAll(async () => {
  program = await WebAssembly.compile(fliteWasm());
});

/** The phones that the engine itself prints, without pauses; its "ax" is the dictionary's unstressed AH. */
function phonesOf(text: string): string {
  const { printed } = runFlite(program, ["-voice", DEFAULT_VOICE, "-ps", "-t", text, "-o", WAV_PATH]);
  const phones = printed
    .trim()
    .split(/\s+/)
    .filter((phone) => phone !== "pau");
  return phones.map((phone) => (phone === "ax" ? "AH" : phone.toUpperCase())).join(" ");
}

// Judge of the words in DICTIONARY: the CMU Pronouncing Dictionary, stress marks left out (one of its variants each). Of the
// names below it also has: acid, complex, chloride, sodium, bicarbonate, isotonic, percent, alfa, as they stand there.
const DICTIONARY: readonly [written: string, phones: string][] = [
  ["MAP", "M AE P"],
  ["systolic", "S IH S T AA L IH K"],
  ["diastolic", "D AY AH S T AA L IH K"],
  ["adrenaline", "AH D R EH N AH L AH N"],
  ["epinephrine", "EH P IH N EH F R IH N"],
  ["ephedrine", "IH F EH D R IH N"],
  ["blood", "B L AH D"],
  ["micrograms", "M AY K R OW G R AE M Z"],
  ["milligrams", "M IH L AH G R AE M Z"],
  ["kg", "K IH L AH G R AE M Z"],
  ["%", "P ER S EH N T"],
  ["pupils", "P Y UW P AH L Z"],
  ["oxygen", "AA K S AH JH AH N"],
  ["suction", "S AH K SH AH N"],
  ["affirm", "AH F ER M"],
];

// Spelt letter by letter: the names of the letters.
const LETTERS: readonly [written: string, phones: string][] = [
  ["CPP", "S IY P IY P IY"],
  ["ICP", "AY S IY P IY"],
  ["SBP", "EH S B IY P IY"],
  ["GCS", "JH IY S IY EH S"],
  ["SpO2", "EH S P IY OW T UW"],
  ["EtCO2", "IY T IY S IY OW T UW"],
];

// Not in that dictionary: common practice among English-speaking clinicians, no source.
const TRADE: readonly [written: string, phones: string][] = [
  ["phenylephrine", "F EH N AH L EH F R IH N"],
  ["etomidate", "AH T AA M IH D EY T"],
  ["fentanyl", "F EH N T AH N AH L"],
  ["ketamine", "K EH T AH M IY N"],
  ["norepinephrine", "N AO R EH P IH N EH F R IH N"],
  ["noradrenaline", "N AO R AH D R EH N AH L AH N"],
  ["prothrombin complex", "P R OW TH R AA M B AH N K AA M P L EH K S"],
  ["andexanet alfa", "AE N D EH K S AH N EH T AE L F AH"],
  ["calcium chloride", "K AE L S IY AH M K L AO R AY D"],
  ["isotonic crystalloid", "AY S AH T AA N IH K K R IH S T AH L OY D"],
  ["rocuronium", "R AA K Y UW R OW N IY AH M"],
  ["succinylcholine", "S AH K S IH N AH L K OW L IY N"],
  ["suxamethonium", "S AH K S AH M EH TH OW N IY AH M"],
  ["lidocaine", "L AY D OW K EY N"],
  ["propofol", "P R OW P AH F AO L"],
  ["sugammadex", "S UW G AE M AH D EH K S"],
  ["atropine", "AE T R AH P IY N"],
  ["midazolam", "M IH D EY Z OW L AE M"],
  ["vasopressin", "V EY Z OW P R EH S IH N"],
  ["ephedrine", "IH F EH D R IH N"],
  ["tranexamic acid", "T R AE N EH K S AE M IH K AE S AH D"],
  ["phytomenadione", "F AY T OW M EH N AH D AY OW N"],
  ["phytonadione", "F AY T OW N AA D AY OW N"],
  ["idarucizumab", "AY D AE R UW S IH Z UW M AE B"],
  ["protamine", "P R OW T AH M IY N"],
  ["calcium gluconate", "K AE L S IY AH M G L UW K OW N EY T"],
  ["metaraminol", "M EH T AH R AE M IH N AO L"],
  ["levetiracetam", "L EH V AH T AY R AE S AH T AE M"],
  ["mannitol", "M AE N AH T AO L"],
  ["saline", "S EY L IY N"],
  ["three percent saline", "TH R IY P ER S EH N T S EY L IY N"],
  ["three percent sodium chloride", "TH R IY P ER S EH N T S OW D IY AH M K L AO R AY D"],
  ["five percent saline", "F AY V P ER S EH N T S EY L IY N"],
  ["five percent sodium chloride", "F AY V P ER S EH N T S OW D IY AH M K L AO R AY D"],
  ["seven point five percent saline", "S EH V AH N P OY N T F AY V P ER S EH N T S EY L IY N"],
  [
    "seven point five percent sodium chloride",
    "S EH V AH N P OY N T F AY V P ER S EH N T S OW D IY AH M K L AO R AY D",
  ],
  ["twenty three point four percent saline", "T W EH N T IY TH R IY P OY N T F AO R P ER S EH N T S EY L IY N"],
  [
    "twenty three point four percent sodium chloride",
    "T W EH N T IY TH R IY P OY N T F AO R P ER S EH N T S OW D IY AH M K L AO R AY D",
  ],
  ["twenty percent mannitol", "T W EH N T IY P ER S EH N T M AE N AH T AO L"],
  ["sodium bicarbonate", "S OW D IY AH M B AY K AA R B AH N AH T"],
  ["eight point four percent bicarbonate", "EY T P OY N T F AO R P ER S EH N T B AY K AA R B AH N AH T"],
  ["capnography", "K AE P N AA G R AH F IY"],
  ["supraglottic", "S UW P R AH G L AA T IH K"],
  ["mL", "M IH L IH L IY T ER Z"],
  ["mmHg", "M IH L IH M IY T ER Z AH V M ER K Y ER IY"],
];

/** Every name of a drug, a fluid or an osmotic that a sentence can hold, in either region. */
const NAMES: readonly string[] = [
  ...defaultProtocol.drugs.flatMap(({ names }) => [names.international, names.us]),
  ...defaultProtocol.fluids.map(({ label }) => label),
  ...defaultProtocol.osmotics.flatMap(({ spoken }) => spoken),
];

it.each([...new Set(NAMES)])("the phones for %s are asserted below", (name) => {
  expect([...DICTIONARY, ...TRADE].map(([written]) => written)).toContain(name);
});

describe("the engine's own phones", () => {
  it.each([...DICTIONARY, ...LETTERS, ...TRADE])("for %s are %s", (written, phones) => {
    expect(phonesOf(respell(written))).toBe(phones);
  });

  it.each([
    ["110", "one hundred ten"],
    ["105", "one hundred five"],
    ["77", "seventy seven"],
    ["36.5", "thirty six point five"],
    ["0.05", "zero point zero five"],
  ])("for %s are those of %j", (digits, words) => {
    expect(phonesOf(`Pressure ${digits} over sixty.`)).toBe(phonesOf(`Pressure ${words} over sixty.`));
  });
});
