import { checkAlerts } from "./checks/alerts.ts";
import { checkCauses } from "./checks/causes.ts";
import { checkConfirm } from "./checks/confirm.ts";
import { checkDrugs } from "./checks/drugs.ts";
import { checkHerniation } from "./checks/herniation.ts";
import { checkNames } from "./checks/names.ts";
import { checkPhysiology } from "./checks/physiology.ts";
import { checkPopulations } from "./checks/populations.ts";
import { checkRanges } from "./checks/ranges.ts";
import { checkRecipes } from "./checks/recipes.ts";
import { checkSteps } from "./checks/steps.ts";
import { checkTimers } from "./checks/timers.ts";
import { checkVentilation } from "./checks/ventilation.ts";
import type { Faults } from "./fault.ts";
import type { Protocol } from "./protocol.ts";

/** What no single value shows: numbers that contradict one another or could never be said. Empty: all is well. */
export const crossCheck = (protocol: Protocol): Faults => [
  ...checkPopulations(protocol),
  ...checkCauses(protocol),
  ...checkHerniation(protocol),
  ...checkRanges(protocol),
  ...checkPhysiology(protocol),
  ...checkVentilation(protocol),
  ...checkAlerts(protocol),
  ...checkSteps(protocol),
  ...checkNames(protocol),
  ...checkDrugs(protocol),
  ...checkRecipes(protocol),
  ...checkConfirm(protocol),
  ...checkTimers(protocol),
];
