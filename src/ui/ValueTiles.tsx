import type { Tile } from "../app/screenView.ts";
import { Amount } from "./Amount.tsx";
import { ShapeMark } from "./ShapeMark.tsx";

/** Every value with where it comes from and how old it is, in words. */
export function ValueTiles({ tiles }: { readonly tiles: readonly Tile[] }) {
  return (
    <section className="tiles" aria-label="Values">
      <dl>
        {tiles.map((tile) => (
          <div key={tile.id} className={`tile tile-${tile.origin}${tile.stale ? " tile-stale" : ""}`}>
            <dt>{tile.label}</dt>
            <dd className="tile-value">
              <Amount text={tile.text} unitClass="tile-unit" />
            </dd>
            {tile.origin !== "none" && (
              <dd className="tile-origin">
                {tile.stale && <ShapeMark shape="clock" />}
                {[tile.stale ? "old" : "", tile.origin, tile.ageText].filter((word) => word !== "").join(", ")}
              </dd>
            )}
          </div>
        ))}
      </dl>
    </section>
  );
}
