/** One value of `minimalProtocol` that is another; `undefined` takes it out. */
export type Change = readonly [path: string, value: unknown];

/** By family: what is changed, and all that is then said; nothing: it is as it may be. */
export type CheckRows = Readonly<Record<string, readonly (readonly [readonly Change[], readonly string[]])[]>>;
