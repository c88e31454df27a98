import { roundedDose, showExactly } from "../../core/shownNumber.ts";
import { selectFluidTotals, selectTotals, type GivenTotal } from "../../log/totals.ts";
import type { RecordedCase } from "../recordedCase.ts";
import { section, table, type Html } from "./html.ts";
import { infusionSegments } from "./laneEvents.ts";
import type { Strikable } from "./struck.ts";
import { showLength, type Times } from "./times.ts";
import { capital, drugName, fluidName, showDose, showMl, showStrength } from "./words.ts";

const NONE = "–";

const showTotal = (total: GivenTotal): string =>
  total.ok
    ? showDose({ value: roundedDose(total.value.value), unit: total.value.unit })
    : "in units that have no sum: add by hand";

/** What was given, with struck entries struck and in no total. */
export function drugSection(recorded: RecordedCase, times: Times, strike: Strikable): Html {
  const { facts, struckIds, protocol, state } = recorded;
  const name = (id: string): string => capital(drugName(protocol, id));
  const given = facts.flatMap((fact) => {
    if (fact.type !== "drug.given") return [];
    const { id, atMs, drugId, amount, volumeMl, planned } = fact;
    return [
      [
        times.time(atMs),
        strike(id, name(drugId)),
        strike(id, showDose(amount)),
        volumeMl === undefined ? NONE : showMl(volumeMl),
        planned === undefined ? NONE : showDose(planned),
      ],
    ];
  });
  const segments = infusionSegments(facts.filter(({ id }) => !struckIds.has(id))).map(({ fact, toMs }) => [
    times.time(fact.atMs),
    toMs === undefined ? "still running" : times.time(toMs),
    name(fact.drugId),
    showDose(fact.rate),
    fact.mlPerH === undefined ? NONE : `${showExactly(fact.mlPerH)} mL/h`,
    fact.strength === undefined ? NONE : showStrength(fact.strength),
    toMs === undefined ? NONE : showLength(toMs - fact.atMs),
  ]);
  const fluids = facts.flatMap((fact) =>
    fact.type === "fluid.given"
      ? [
          [
            times.time(fact.atMs),
            strike(fact.id, capital(fluidName(protocol, fact.fluidId))),
            strike(fact.id, showMl(fact.volumeMl)),
          ],
        ]
      : [],
  );
  const totals = [
    ...selectTotals(state).map(({ drugId, total }) => [
      name(drugId),
      total.ok ? String(total.value.count) : NONE,
      showTotal(total),
    ]),
    ...selectFluidTotals(state).map(({ fluidId, count, volumeMl }) => [
      capital(fluidName(protocol, fluidId)),
      String(count),
      showMl(volumeMl),
    ]),
  ];
  const nothing = given.length + segments.length + fluids.length === 0;
  return section(
    "drugs",
    "Drugs and fluids",
    nothing ? "Nothing was recorded as given." : undefined,
    table("Given at once", ["Time", "Drug", "Amount", "Volume", "Planned"], given),
    table("Infusions", ["From", "Until", "Drug", "Rate", "Pump", "Concentration", "Length"], segments),
    table("Fluids", ["Time", "Fluid", "Volume"], fluids),
    table("Totals, infusions not included", ["Drug or fluid", "Times given", "In all"], totals),
  );
}
