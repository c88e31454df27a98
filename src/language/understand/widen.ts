/** A number slot of `grammars/numbers.jsgf`; numbers said two ways keep their form, in which the halves must agree. */
const SLOT = /public <(n(?!TwoWays)[A-Z]\w*)> =[^;]*;/gu;

/**
 * The same language with any number in every slot.
 *
 * @param sources grammar files by name.
 * @returns       the files with the slots of `numbers` opened.
 *
 * For: naming a typed value that no slot admits, so that "heart rate 300" is answered and not passed over.
 * Not for: sound. The narrow slots are what keeps one number from being heard as another.
 */
export const widenNumbers = (sources: Readonly<Record<string, string>>): Readonly<Record<string, string>> => ({
  ...sources,
  numbers: (sources["numbers"] ?? "").replace(SLOT, "public <$1> = <anyNumber>;"),
});
