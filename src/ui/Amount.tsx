import { numberAndUnit } from "./numberAndUnit.ts";

/** A text as given; where it ends in a number and a unit, the unit is set smaller. */
export function Amount({ text, unitClass }: { readonly text: string; readonly unitClass: string }) {
  const { main, unit } = numberAndUnit(text);
  return (
    <>
      {main}
      {unit !== undefined && <span className={unitClass}> {unit}</span>}
    </>
  );
}
