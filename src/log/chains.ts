type Link<C> = { readonly earlier: C | undefined };

/** The chain less one link: the newer links are rebuilt, the older ones shared. The same chain when it is not there. */
export function without<C extends Link<C>>(chain: C | undefined, isTarget: (link: C) => boolean): C | undefined {
  const newer: C[] = [];
  for (let link = chain; link !== undefined; link = link.earlier) {
    if (isTarget(link)) return newer.reduceRight<C | undefined>((earlier, n) => ({ ...n, earlier }), link.earlier);
    newer.push(link);
  }
  return chain;
}

/** The chain with one link more, right above the target. Undefined when that is not there. */
export function above<C extends Link<C>>(
  chain: C | undefined,
  isTarget: (link: C) => boolean,
  make: (target: C) => C,
): C | undefined {
  const newer: C[] = [];
  for (let link = chain; link !== undefined; link = link.earlier) {
    if (isTarget(link)) return newer.reduceRight<C>((earlier, n) => ({ ...n, earlier }), make(link));
    newer.push(link);
  }
  return undefined;
}

interface AnyChain {
  readonly earlier: AnyChain | undefined;
}

/** The cells less one link; a cell that runs empty is gone. The same cells when it is in none of them. */
export function lessOne<T extends object>(cells: T, isTarget: (link: NonNullable<T[keyof T]>) => boolean): T {
  for (const [key, chain] of Object.entries(cells) as [keyof T, AnyChain][]) {
    const rest = without(chain, isTarget as unknown as (link: AnyChain) => boolean);
    if (rest === chain) continue;
    const { [key]: _struck, ...others } = cells;
    return (rest === undefined ? others : { ...others, [key]: rest }) as T;
  }
  return cells;
}

/** The links of a chain, newest first. */
export function* linksOf<C extends Link<C>>(chain: C | undefined): Generator<C> {
  for (let link = chain; link !== undefined; link = link.earlier) yield link;
}
