import fc from "fast-check";

/**
 * The same random cases at every run, so that a change is judged by what it changed.
 * `PROPERTY_SEED=7 npm test -- unit` plays others; fast-check prints the seed of a failure.
 */
fc.configureGlobal({ seed: Number(process.env["PROPERTY_SEED"] ?? 20_261_125) });
