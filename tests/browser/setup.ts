import { existsSync } from "node:fs";
import { join } from "node:path";
import type { TestProject } from "vitest/node";
import { findBrowser } from "./findBrowser.ts";

declare module "vitest" {
  export interface ProvidedContext {
    browserPath: string;
  }
}

/** Runs once before all browser tests. */
export default function setup(project: TestProject): void {
  if (!existsSync(join(import.meta.dirname, "../../dist/index.html"))) {
    throw new Error("There is no build to test: run `npm run build` first.");
  }
  project.provide("browserPath", findBrowser());
}
