import type { CareIntent } from "../../../language/careIntent.ts";
import type { AppContext, AppState } from "../../context.ts";
import { refused, type Decision } from "../decision.ts";
import type { Source } from "../recordStatement.ts";

type CourseIntent = Extract<CareIntent, { readonly kind: "airway" | "phase" | "clock" | "rescue" | "tell" | "help" }>;

/** What follows from what was said of the course of the case. */
export function decideCourse(
  _context: AppContext,
  _state: AppState,
  intent: CourseIntent,
  _source: Source,
  _nowMs: number,
): Decision {
  return refused(`${intent.kind} is not understood yet.`);
}
