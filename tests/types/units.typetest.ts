// Lines that must not compile. The type check is the test: an unused expectation is an error too.
import { cerebralPerfusionPressure, meanArterialPressure } from "../../src/core/pressure.ts";
import type { MmHg, Percent, PerMin } from "../../src/core/quantity.ts";
import type { Fact, NewFact, VitalValue } from "../../src/log/facts.ts";
import type { CaseState } from "../../src/log/caseState.ts";
import type { Cpp } from "../../src/log/perfusion.ts";
import type { Protocol } from "../../src/protocol/protocol.ts";

declare const mapMmHg: MmHg;
declare const spo2Pct: Percent;
declare const hrPerMin: PerMin;
declare const state: CaseState;
declare const fact: Fact;
declare const cpp: Cpp;
declare const protocol: Protocol;

cerebralPerfusionPressure(mapMmHg, mapMmHg);
// @ts-expect-error a saturation is no pressure
cerebralPerfusionPressure(mapMmHg, spo2Pct);
// @ts-expect-error a rate is no pressure
meanArterialPressure(hrPerMin, mapMmHg);
// @ts-expect-error an unchecked number is no pressure
meanArterialPressure(120, 60);
// @ts-expect-error one quantity is not another
export const wrongBrand: MmHg = spo2Pct;

// @ts-expect-error the state is never changed in place
state.vitals = {};
// @ts-expect-error facts are never edited
fact.atMs = 0;
// @ts-expect-error protocol values are never changed at run time
protocol.targets.mapMmHg.value = 80;

// @ts-expect-error without a measured ICP there is no CPP number
export const unmeasured: number = cpp.cppMmHg;

// @ts-expect-error a new fact has no stamp of its own
export const stamped: NewFact = { type: "step.called", stepId: "suction", id: "f1" };
// @ts-expect-error a stored unit is one of the UCUM codes, not what people write
export const wrongUnit: VitalValue["unit"] = "mmHg";
