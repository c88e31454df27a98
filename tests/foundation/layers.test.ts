import { join } from "node:path";
import { ESLint } from "eslint";
import { describe, expect, it } from "vitest";

const ROOT = join(import.meta.dirname, "../..");
const WATCHED = ["tragus/layers", "tragus/no-barrel", "no-restricted-globals", "no-restricted-properties"];

// Planted files do not exist on disk, so the rules that need types are left out; those under test need none.
const eslint = new ESLint({
  cwd: ROOT,
  overrideConfig: { languageOptions: { parserOptions: { projectService: false } } },
  ruleFilter: ({ ruleId }) => WATCHED.includes(ruleId),
});

async function complaints(file: string, code: string): Promise<string[]> {
  const [result] = await eslint.lintText(code, { filePath: join(ROOT, "src", file) });
  return (result?.messages ?? []).map((message) => message.ruleId ?? message.message);
}

const value = (path: string, name = "x") => `import { ${name} } from "${path}";\n${name}();\n`;
const type = (path: string) => `import type { X } from "${path}";\nexport type Y = X;\n`;

// [file in src/, code that must be caught]
const PLANTED_IMPORTS: readonly (readonly [string, string])[] = [
  ["core/a.ts", value("../log/facts.ts")],
  ["core/a.ts", type("../protocol/priority.ts")],
  ["core/a.ts", value("valibot")],
  ["core/a.ts", value("node:fs")],
  ["protocol/a.ts", type("../log/facts.ts")],
  ["protocol/a.ts", value("react")],
  ["log/a.ts", type("../rules/alertsDue.ts")],
  ["log/a.ts", value("idb")],
  ["rules/a.ts", type("../language/intent.ts")],
  ["rules/a.ts", value("../app/session.ts")],
  ["language/a.ts", type("../protocol/protocol.ts")],
  ["language/deep/a.ts", type("../../listener/search.ts")],
  ["language/a.ts", value("zustand")],
  ["listener/a.ts", type("../log/facts.ts")],
  ["listener/a.ts", type("../app/ports.ts")],
  ["listener/a.ts", value("compromise")],
  ["listener/a.ts", value("onnxruntime-web")],
  ["rehearsal/a.ts", type("../log/facts.ts")],
  ["rehearsal/a.ts", value("fast-check")],
  ["export/a.ts", type("../rules/alertsDue.ts")],
  ["export/a.ts", value("../adapters/storage/indexedDbFactStore.ts")],
  ["app/a.ts", type("../adapters/clock/browserClock.ts")],
  ["app/a.ts", type("../ui/screenStore.ts")],
  ["app/a.ts", value("zustand/vanilla")],
  ["app/a.ts", value("react")],
  ["adapters/voice/a.ts", type("../../app/session.ts")],
  ["adapters/voice/a.ts", type("../../protocol/protocol.ts")],
  ["adapters/voice/a.ts", type("../storage/indexedDbFactStore.ts")],
  ["adapters/voice/a.ts", type("../../language/jsgf/wordGraph.ts")],
  ["adapters/speech/a.ts", value("../../language/understand/understand.ts")],
  ["adapters/speech/a.ts", value("node:fs")],
  ["adapters/clock/a.ts", value("react")],
  ["ui/A.tsx", type("../adapters/clock/browserClock.ts")],
  ["ui/A.tsx", type("../rules/alertsDue.ts")],
  ["ui/A.tsx", value("onnxruntime-web")],
  ["cli/a.ts", type("../ui/screenStore.ts")],
  ["cli/a.ts", value("../main.tsx")],
  ["cli/a.ts", value("react")],
  ["elsewhere/a.ts", value("../core/result.ts")],
  // Every other way of naming a module.
  ["core/a.ts", `export { x } from "../log/facts.ts";\nexport const y = 1;\n`],
  ["core/a.ts", `export * from "../log/facts.ts";\nexport const y = 1;\n`],
  ["core/a.ts", `export const load = () => import("../log/facts.ts");\n`],
  ["core/a.ts", `export type Y = import("../log/facts.ts").Fact;\n`],
  ["core/a.ts", `export const url = new URL("../adapters/voice/a.ts", import.meta.url);\n`],
  ["core/a.ts", `export const all = import.meta.glob("../log/*.ts");\n`],
  ["core/a.ts", `export const all = import.meta.glob(["../log/*.ts"]);\n`],
  ["core/a.ts", value("../../grammars/vitals.jsgf?raw")],
  ["adapters/speech/a.ts", value("../../../grammars/vitals.jsgf?raw")],
  ["cli/a.ts", value("../../tests/browser/wav.ts")],
  ["core/a.ts", `export const root = new URL("../../", import.meta.url);\n`],
];

const ALLOWED_IMPORTS: readonly (readonly [string, string])[] = [
  ["core/a.ts", type("./result.ts")],
  ["protocol/a.ts", type("../core/vitals.ts") + value("valibot")],
  ["log/a.ts", type("../protocol/protocol.ts")],
  ["rules/a.ts", type("../log/caseState.ts")],
  ["language/deep/a.ts", type("../../rules/alertsDue.ts") + value("compromise/one")],
  ["listener/a.ts", type("../language/jsgf/grammarTypes.ts")],
  ["rehearsal/a.ts", type("../protocol/protocol.ts")],
  ["export/a.ts", type("../log/facts.ts")],
  ["app/a.ts", type("../listener/listen.ts") + value("../export/csv.ts", "z")],
  ["adapters/voice/a.ts", type("../../app/ports.ts")],
  ["adapters/voice/b.ts", type("../../protocol/priority.ts")],
  ["adapters/voice/c.ts", `export const url = new URL("./worker.ts", import.meta.url);\n`],
  ["adapters/speech/a.ts", value("../../language/jsgf/compileGrammar.ts")],
  ["adapters/speech/nodeListener.ts", value("node:fs/promises")],
  ["adapters/storage/a.ts", value("idb")],
  ["ui/A.tsx", type("../app/screenView.ts") + value("react")],
  ["cli/c.ts", `export const root = new URL("../../", import.meta.url);\n`],
  ["cli/b.ts", `export const url = new URL("../../grammars/", import.meta.url);\n`],
  ["cli/a.ts", value("../adapters/clock/manualClock.ts") + value("node:process", "z")],
  ["main.tsx", value("./adapters/voice/a.ts") + value("../grammars/vitals.jsgf?raw", "z")],
];

const PLANTED_GLOBALS: readonly string[] = [
  "export const now = () => Date.now();",
  "export const now = () => new Date();",
  "export const w = () => window;",
  "export const d = () => document.title;",
  "export const s = () => localStorage.getItem('a');",
  "export const i = () => indexedDB;",
  "export const f = () => fetch('/');",
  "export const t = () => setTimeout(() => {}, 1);",
  "export const t = () => setInterval(() => {}, 1);",
  "export const p = () => performance.now();",
  "export const c = () => console.log('a');",
  "export const g = () => globalThis;",
  "export const r = () => Math.random();",
  "export const { random } = Math;",
];

const INNER = ["core", "protocol", "log", "rules", "language", "listener", "rehearsal", "export", "app"];

describe("the layer rule", () => {
  it.each(PLANTED_IMPORTS)("catches in %s: %s", async (file, code) => {
    expect(await complaints(file, code)).toContain("tragus/layers");
  });

  it.each(ALLOWED_IMPORTS)("lets pass in %s: %s", async (file, code) => {
    expect(await complaints(file, code)).toEqual([]);
  });
});

describe("inner layers reach nothing outside", () => {
  it.each(INNER.flatMap((layer) => PLANTED_GLOBALS.map((code) => [layer, code] as const)))(
    "src/%s: %s",
    async (layer, code) => {
      const found = await complaints(`${layer}/planted.ts`, code);
      expect(found.some((rule) => rule.startsWith("no-restricted-"))).toBe(true);
    },
  );

  it("leaves the clock adapter its clock", async () => {
    expect(await complaints("adapters/clock/a.ts", "export const now = () => Date.now();")).toEqual([]);
  });
});

describe("barrel files", () => {
  it.each([
    ["core/index.ts", "export const a = 1;\n"],
    ["core/all.ts", `export { ok } from "./result.ts";\nexport * from "./vitals.ts";\n`],
  ])("are refused: %s", async (file, code) => {
    expect(await complaints(file, code)).toContain("tragus/no-barrel");
  });
});
