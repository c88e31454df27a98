/** One command of a README example and the output shown under it. */
export type Example = { readonly command: string; readonly output: string };

const CONSOLE_BLOCK = /^```console\n([\s\S]*?)^```/gm;

/** Examples in `console` blocks: a line after "$ " is a command, the lines up to the next one are its output. */
export function examplesOf(markdown: string): readonly Example[] {
  return [...markdown.matchAll(CONSOLE_BLOCK)].flatMap(([, block = ""]) =>
    block
      .split(/^\$ /m)
      .slice(1)
      .map((part) => {
        const [command = "", ...output] = part.split("\n");
        return { command, output: output.join("\n").trim() };
      }),
  );
}

/** npm scripts that a text tells the reader to run. */
export function npmScriptsOf(markdown: string): readonly string[] {
  const named = [...markdown.matchAll(/\bnpm (?:run )?(?:--silent )?([a-z][\w:-]*)/g)].map(([, name = ""]) => name);
  return [...new Set(named)].filter((name) => !["ci", "run", "install"].includes(name));
}

/** Files of the project that a text names, in backticks or as the target of a link. */
export function pathsOf(markdown: string): readonly string[] {
  const ticked = [...markdown.matchAll(/`((?:src|tests|grammars|public|\.ci)\/[\w./-]*)`/g)];
  const linked = [...markdown.matchAll(/\]\(([^)#:]+)\)/g)];
  return [...new Set([...ticked, ...linked].map(([, path = ""]) => path))];
}
