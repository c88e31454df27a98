import { join } from "node:path";
import { defineConfig } from "eslint/config";
import hooks from "eslint-plugin-react-hooks";
import tseslint from "typescript-eslint";
import { layersRule, noBarrelRule } from "./.ci/layerRule.mjs";
import { INNER_LAYERS } from "./.ci/layers.mjs";

/** Doors to the outside world. An inner layer is given time, chance and storage; it never fetches them. */
const OUTSIDE = [
  "Date",
  "window",
  "document",
  "navigator",
  "self",
  "globalThis",
  "localStorage",
  "sessionStorage",
  "indexedDB",
  "fetch",
  "XMLHttpRequest",
  "WebSocket",
  "Worker",
  "setTimeout",
  "setInterval",
  "setImmediate",
  "requestAnimationFrame",
  "performance",
  "crypto",
  "console",
  "process",
  "Buffer",
];

export default defineConfig(
  { ignores: ["node_modules/", "dist/", "bench/", "coverage/", "public/"] },
  {
    files: ["src/**/*.{ts,tsx}", "tests/**/*.{ts,tsx}", "*.config.ts"],
    extends: [tseslint.configs.recommendedTypeChecked],
    languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: import.meta.dirname } },
    linterOptions: { reportUnusedDisableDirectives: "error" },
    rules: {
      eqeqeq: "error",
      "no-var": "error",
      "prefer-const": "error",
      "@typescript-eslint/consistent-type-imports": ["error", { fixStyle: "inline-type-imports" }],
      // `"*" | string` documents the one special word; the compiler loses nothing by it.
      "@typescript-eslint/no-redundant-type-constituents": "off",
      "@typescript-eslint/no-deprecated": "error",
      "@typescript-eslint/prefer-readonly": "error",
      "@typescript-eslint/restrict-template-expressions": ["error", { allowNumber: true }],
      "@typescript-eslint/switch-exhaustiveness-check": ["error", { considerDefaultExhaustiveForUnions: true }],
      // A name that starts with "_" is taken out of an object to leave the rest.
      "@typescript-eslint/no-unused-vars": ["error", { varsIgnorePattern: "^_", argsIgnorePattern: "^_" }],
      // A port promises; an adapter may have the answer at once.
      "@typescript-eslint/require-await": "off",
      "@typescript-eslint/only-throw-error": "error",
    },
  },
  {
    files: ["src/**/*.{ts,tsx}"],
    plugins: { tragus: { rules: { layers: layersRule, "no-barrel": noBarrelRule } } },
    rules: {
      "tragus/layers": ["error", join(import.meta.dirname, "src")],
      "tragus/no-barrel": "error",
      "max-lines": ["error", 250],
    },
  },
  {
    files: INNER_LAYERS.map((layer) => `src/${layer}/**/*.{ts,tsx}`),
    rules: {
      "no-restricted-globals": ["error", ...OUTSIDE],
      "no-restricted-properties": [
        "error",
        { object: "Math", property: "random", message: "Chance comes in as a value." },
      ],
    },
  },
  {
    files: ["src/ui/**/*.{ts,tsx}", "src/main.tsx"],
    extends: [hooks.configs.flat.recommended],
  },
  {
    // Tests look into parsed JSON and fakes on purpose; what they find is checked by their assertions.
    files: ["tests/**/*.{ts,tsx}"],
    rules: {
      "@typescript-eslint/no-unsafe-assignment": "off",
      "@typescript-eslint/no-unsafe-member-access": "off",
      "@typescript-eslint/no-unsafe-argument": "off",
      "@typescript-eslint/no-unsafe-call": "off",
      "@typescript-eslint/no-unsafe-return": "off",
      "@typescript-eslint/unbound-method": "off",
    },
  },
);
