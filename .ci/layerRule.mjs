import { dirname, relative, resolve, sep } from "node:path";
import { layerViolation } from "./layers.mjs";

const toPosix = (path) => path.split(sep).join("/");

/** ESLint rule: every way of naming another module obeys the table in `layers.mjs`. */
export const layersRule = {
  meta: { type: "problem", schema: [{ type: "string" }], messages: { layer: "{{reason}}" } },
  create(context) {
    const srcFolder = context.options[0];
    const file = toPosix(relative(srcFolder, context.filename));

    const check = (node, specifier) => {
      if (typeof specifier !== "string") return;
      const bare = specifier.replace(/\?.*$/, "");
      const isPath = bare.startsWith(".") || bare.startsWith("/");
      const target = isPath ? toPosix(relative(srcFolder, resolve(dirname(context.filename), bare))) : bare;
      const reason = layerViolation(file, target, isPath);
      if (reason !== undefined) context.report({ node, messageId: "layer", data: { reason } });
    };

    const checkSource = (node) => check(node, node.source?.value);
    const isImportMeta = (node) => node?.type === "MetaProperty";

    return {
      ImportDeclaration: checkSource,
      ExportNamedDeclaration: checkSource,
      ExportAllDeclaration: checkSource,
      ImportExpression: checkSource,
      TSImportType: checkSource,
      // new URL("./worker.ts", import.meta.url)
      NewExpression(node) {
        const [path, base] = node.arguments;
        const fromHere = base?.type === "MemberExpression" && isImportMeta(base.object);
        if (node.callee.name === "URL" && fromHere) check(node, path?.value);
      },
      // import.meta.glob("../folder/*.ts")
      CallExpression(node) {
        const { callee } = node;
        if (callee.type !== "MemberExpression" || !isImportMeta(callee.object)) return;
        for (const argument of node.arguments.flatMap((a) => (a.type === "ArrayExpression" ? a.elements : [a]))) {
          check(node, argument?.value);
        }
      },
    };
  },
};

/** ESLint rule: no file in `src/` exists only to pass on the names of others; such files hide cycles. */
export const noBarrelRule = {
  meta: {
    type: "problem",
    schema: [],
    messages: { barrel: "No barrel files: import from the file that defines the name." },
  },
  create: (context) => ({
    Program(node) {
      const passesOn = (statement) => statement.type.startsWith("Export") && statement.source;
      const isIndex = /[\\/]index\.tsx?$/.test(context.filename);
      if (isIndex || (node.body.length > 0 && node.body.every(passesOn))) context.report({ node, messageId: "barrel" });
    },
  }),
};
