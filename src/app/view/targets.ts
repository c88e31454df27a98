import { herniationWords } from "../../language/sentences/statement.ts";
import { showTargets } from "../../language/sentences/targets.ts";
import { sentences } from "../../language/sentences/sentence.ts";
import type { CaseState } from "../../log/caseState.ts";
import { selectTargets } from "../../log/targets.ts";
import type { Protocol } from "../../protocol/protocol.ts";

/** The targets in force, one line each, and herniation as long as it was said either way. */
export function viewTargets(log: CaseState, protocol: Protocol): readonly string[] {
  const herniation = log.herniation === undefined ? [] : [herniationWords(log.herniation.present)];
  return [...showTargets(selectTargets(log, protocol), protocol.region), ...herniation].map((line) => sentences(line));
}
