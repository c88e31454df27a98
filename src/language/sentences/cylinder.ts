import type { CylinderEnd } from "../../rules/cylinderEnd.ts";
import { sayExactly, sayExactlyTwoWays } from "./number.ts";
import { sentences } from "./sentence.ts";
import { sayAge } from "./vital.ts";

const MS_PER_MIN = 60_000;

/** Rounded down: oxygen is never said to last longer than it does. */
const sayMinutes = (minutes: number): string => {
  const whole = Math.floor(minutes);
  return whole < 1 ? "under one minute" : sayAge(whole * MS_PER_MIN);
};

/** What was not said and was taken over. */
export type TakenOver = { readonly contents: boolean; readonly flow: boolean };

const sayTakenOver = ({ contents, flow }: TakenOver): string | undefined =>
  contents && flow
    ? undefined
    : contents
      ? "Contents from the last record"
      : flow
        ? "Flow from the last record"
        : undefined;

/** "Cylinder six hundred, six zero zero, litres at fifteen, one five. Thirty minutes to the reserve, forty to empty." */
export function sayCylinder(end: CylinderEnd, taken: TakenOver): string {
  const contents = `${sayExactlyTwoWays(Math.round(end.contentsL))}, litres`;
  return sentences(
    `Cylinder ${contents} at ${sayExactlyTwoWays(end.flowLPerMin)}`,
    sayTakenOver(taken),
    end.toReserveMin <= 0
      ? `In the reserve, ${sayMinutes(end.toEmptyMin)} to empty`
      : `${sayMinutes(end.toReserveMin)} to the reserve, ${sayMinutes(end.toEmptyMin)} to empty`,
  );
}

export const NO_CYLINDER = "No cylinder recorded. Say its litres and the flow.";
export const WHICH_SIZE = "Which size? Say bar, size and flow together.";
export const askFlow = (contentsL: number): string =>
  sentences(`Cylinder ${sayExactly(Math.round(contentsL))} litres: at what flow? Say it whole`);
export const NO_SUCH_CYLINDER = "No cylinder holds that. Say it again.";
