import type { CareIntent } from "../../../language/careIntent.ts";
import { sayHelpAbout } from "../../../language/sentences/help.ts";
import type { AppContext, AppState } from "../../context.ts";
import { answered, type Decision } from "../decision.ts";
import type { Source } from "../recordStatement.ts";
import { decideAirway } from "./course/decideAirway.ts";
import { decideClock } from "./course/decideClock.ts";
import { decidePhase } from "./course/decidePhase.ts";
import { decideRescue } from "./course/decideRescue.ts";
import { decideTell } from "./course/decideTell.ts";

type CourseIntent = Extract<CareIntent, { readonly kind: "airway" | "phase" | "clock" | "rescue" | "tell" | "help" }>;

/** What follows from what was said of the course of the case. */
export function decideCourse(
  context: AppContext,
  { log }: AppState,
  intent: CourseIntent,
  source: Source,
  nowMs: number,
): Decision {
  switch (intent.kind) {
    case "airway":
      return decideAirway(log, intent.event, source, nowMs);
    case "phase":
      return decidePhase(log, intent.phase, source);
    case "clock":
      return decideClock(log, intent.clock, intent.change, source, nowMs);
    case "rescue":
      return decideRescue(context, log, intent.change, source, nowMs);
    case "tell":
      return decideTell(context, log, intent.about, nowMs);
    case "help":
      return answered(sayHelpAbout(intent.topic));
  }
}
