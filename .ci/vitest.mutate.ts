import { defineConfig } from "vitest/config";

/** The tests that judge `src/core`, for mutation testing: nothing else may kill a mutant. */
export default defineConfig({
  test: { include: ["tests/core/**/*.test.ts"], setupFiles: ["tests/propertySeed.ts"], testTimeout: 30_000 },
});
