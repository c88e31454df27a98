/** dependency-cruiser: no import cycles in `src/`, those made of types alone included. */
module.exports = {
  forbidden: [{ name: "no-cycles", severity: "error", from: {}, to: { circular: true } }],
  options: { tsPreCompilationDeps: true, doNotFollow: { path: "node_modules" } },
};
