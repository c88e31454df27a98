import {
  showDrugClass,
  showEmpty,
  showFluid,
  showGivenTotal,
  showInfusion,
  showStrength,
} from "../../language/sentences/shownDose.ts";
import type { CaseState } from "../../log/caseState.ts";
import { selectFluidTotals, selectTotal } from "../../log/totals.ts";
import { findMedicine } from "../../protocol/findMedicine.ts";
import type { DrugClass, Protocol } from "../../protocol/protocol.ts";
import { findFluid, fluidInAll } from "../../rules/fluidTotal.ts";
import { infusionEnds } from "../../rules/infusionEnd.ts";

/** One drug as it stands: its band in the colour of its class, and what was affirmed of it. */
export type DrugView = {
  readonly id: string;
  readonly name: string;
  readonly drugClass: DrugClass;
  /** The class in words: the colour never stands alone. */
  readonly classText: string;
  /** ISO 26825 sets the names of two drugs off from their class, in a black bar. */
  readonly reversed: boolean;
  readonly lines: readonly string[];
};

export type DrugsView = { readonly drugs: readonly DrugView[]; readonly fluids: readonly string[] };

/** The drugs whose label is set off from those of their class, by the standard. */
const REVERSED: readonly string[] = ["adrenaline", "suxamethonium"];

function linesOf(log: CaseState, protocol: Protocol, id: string, nowMs: number): readonly string[] {
  const { strengths, infusions } = log.care;
  const total = selectTotal(log, id);
  const [strength, infusion] = [strengths[id], infusions[id]];
  const end = infusionEnds(log, protocol, nowMs).find((one) => one.drugId === id);
  return [
    ...(infusion === undefined ? [] : [showInfusion(infusion.rate, infusion.mlPerH)]),
    ...(end === undefined ? [] : [showEmpty(end.atMs - nowMs)]),
    ...(total === undefined ? [] : [showGivenTotal(total)]),
    ...(strength === undefined ? [] : [showStrength(strength.strength)]),
  ];
}

type Mention = { readonly drugId: string; readonly drugClass: DrugClass; readonly seq: number };

/** What runs, what was given and what is drawn up, each drug once, the last mentioned first; and the fluids. */
export function viewDrugs(log: CaseState, protocol: Protocol, nowMs: number): DrugsView {
  const { strengths, given, infusions } = log.care;
  const entries: readonly Mention[] = [
    ...Object.values(strengths),
    ...Object.values(given),
    ...Object.values(infusions),
  ];
  const newest = entries.toSorted((a, b) => b.seq - a.seq);
  const drugs = [...new Map(newest.map((entry) => [entry.drugId, entry.drugClass])).entries()];
  return {
    drugs: drugs.map(([id, drugClass]) => ({
      id,
      name: findMedicine(protocol, id)?.name ?? id,
      drugClass,
      classText: showDrugClass(drugClass),
      reversed: REVERSED.includes(id),
      lines: linesOf(log, protocol, id, nowMs),
    })),
    fluids: selectFluidTotals(log).map((total) => {
      const label = findFluid(protocol, total.fluidId)?.label ?? total.fluidId;
      return showFluid(label, total, fluidInAll(log, protocol, total.fluidId).perKilo);
    }),
  };
}
