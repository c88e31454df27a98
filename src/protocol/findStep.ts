import type { Protocol, Step } from "./protocol.ts";

/** The step with this id; `undefined` when this protocol has none. */
export const findStep = (protocol: Protocol, id: string): Step | undefined =>
  protocol.groups.flatMap((group) => group.steps).find((step) => step.id === id);
