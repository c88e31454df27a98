/**
 * Whose voice the listener was trained on. Source: the listener's data card and its list of validation speakers: of the
 * recordings at hand all took part but six speakers of AN4, the Free Spoken Digit set and the telephone prompts.
 */
const DID_NOT = ["an4_mjhp", "an4_fkai", "an4_mrcb", "an4_mmkw", "an4_fcaw", "an4_mnjl"];
const SETS_THAT_DID_NOT = ["fsdd_", "ast_"];

export const tookPart = (speaker: string): boolean =>
  !DID_NOT.includes(speaker) && !SETS_THAT_DID_NOT.some((set) => speaker.startsWith(set));
