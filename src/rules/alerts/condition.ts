import type { Side } from "../../protocol/alertLimits.ts";
import type { Priority } from "../../protocol/priority.ts";
import type { WatchedCode } from "../../protocol/protocol.ts";
import type { SeenSign } from "../herniationWatch.ts";
import type { AlertCause } from "./cause.ts";

/** What an alert has to say, with every number that it names. */
export type AlertBody =
  | {
      readonly kind: "limit";
      readonly code: WatchedCode;
      readonly side: Side;
      /** In the stored unit of what is watched. Unrounded. */
      readonly value: number;
      readonly target: number;
      /** How far beyond the target; 0 where the value is back at it and the alert waits to be sure. */
      readonly beyond: number;
      /** `cppBound` only: CPP is at its target with this ICP, and under it with any higher one. */
      readonly icpAtTargetMmHg?: number;
      readonly origin: "measured" | "computed";
    }
  | {
      readonly kind: "falling";
      readonly code: WatchedCode;
      readonly value: number;
      readonly target: number;
      /** Until it is at its target, if it goes on falling as it does. */
      readonly inMs: number;
      readonly origin: "measured" | "computed";
    }
  | { readonly kind: "neuroSign"; readonly signs: readonly SeenSign[] }
  | { readonly kind: "device"; readonly device: DeviceFault["kind"]; readonly text: string };

/** Alerts of the device itself. They tell nothing of the patient. */
export const DEVICE_ALERTS: readonly DeviceFault["kind"][] = ["recordNotSaved", "microphoneLost"];

/** What is wrong with the device itself; `text` says it and what to do. */
export type DeviceFault = {
  readonly kind: "recordNotSaved" | "microphoneLost";
  /** Unix ms. */
  readonly sinceMs: number;
  readonly text: string;
};

/** How one condition is now, whatever was said of it before. */
export type Condition = {
  readonly alertId: string;
  readonly cause: AlertCause;
  /** Its priority by the newest value; none: there is nothing to say. */
  readonly now: Priority | undefined;
  /** What a standing alert may keep of its priority until it is sure that the condition is over. */
  readonly held: Priority | undefined;
  /** What `alert.raised` keeps: the value, or how many signs. */
  readonly value: number;
  /** Whether this is so much worse than when that value was kept that it must be said. */
  readonly isWorseThan: (kept: number) => boolean;
  readonly body: AlertBody | undefined;
  /** Unix ms of its oldest number. */
  readonly atMs: number;
};
