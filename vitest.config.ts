import react from "@vitejs/plugin-react";
import { defineConfig } from "vitest/config";

export default defineConfig({
  plugins: [react()],
  test: {
    // Two workers: the machines this runs on have two cores, and more only fight over them.
    maxWorkers: 2,
    projects: [
      {
        extends: true,
        test: {
          name: "unit",
          include: ["tests/**/*.test.{ts,tsx}"],
          exclude: ["tests/browser/**"],
          setupFiles: ["tests/propertySeed.ts"],
          // Only what hangs: beside the browser tests the processor is theirs.
          testTimeout: 120_000,
          hookTimeout: 120_000,
        },
      },
      {
        extends: true,
        test: {
          name: "browser",
          include: ["tests/browser/**/*.test.ts"],
          exclude: ["tests/browser/crash/**"],
          globalSetup: ["tests/browser/setup.ts"],
          fileParallelism: false,
          testTimeout: 180_000,
          hookTimeout: 120_000,
        },
      },
      {
        extends: true,
        test: {
          name: "crash",
          include: ["tests/browser/crash/**/*.test.ts"],
          globalSetup: ["tests/browser/setup.ts"],
          fileParallelism: false,
        },
      },
    ],
  },
});
