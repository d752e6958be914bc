/**
 * Bundles the three programs:
 * - `server/dist/cli.cjs`, the command line, and beside it what only some of its commands use;
 * - `server/dist/server.cjs`, the language server, for any editor, and beside it `wave-worker.cjs`, the thread in which
 *   it simulates;
 * - `extension/dist/extension.cjs` with its own copy of the server, both minified for the package, and the pages of its
 *   panels in `extension/dist/pages/`, a script and a style for each `extension/src/panels/NAME/page/main.ts`.
 *
 * A server is a small starter that switches Node's compile cache on before the bundle beside it is compiled.
 */
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { basename, dirname, join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { countedLoops } from './counted-loops.mjs';

const root = fileURLToPath(new URL('..', import.meta.url));

/** Inside VS Code the cache folder is shared with other programs; Node keeps the entries apart by content. */
const serverStarter = `'use strict';\nrequire('node:module').enableCompileCache?.();\nrequire('./server-bundle.cjs');\n`;

/** The typeface of PDFs is part of a bundle, and its terms go wherever it goes. */
const fontTerms = readFileSync(join(root, 'node_modules/dejavu-fonts-ttf/LICENSE'));

const common = {
  absWorkingDir: root,
  bundle: true,
  platform: 'node',
  target: 'node22',
  sourcemap: 'linked',
  sourcesContent: false,
  legalComments: 'none',
  logLevel: 'warning',
  loader: { '.ttf': 'binary' },
  write: false,
};

const withCountedLoops = countedLoops(join(root, '.config/tsconfig.json'));
const sourceOf = (path) => withCountedLoops(path) ?? readFileSync(path, 'utf8');

/** The sources with loops that run fast from the start. */
const counted = {
  name: 'counted-loops',
  setup({ onLoad }) {
    onLoad({ filter: /[\\/]src[\\/].*\.ts$/ }, ({ path }) => ({ contents: sourceOf(path), loader: 'ts' }));
  },
};

/** Parts of the command line that most commands never need and that take long to load: bundles of their own. */
const apart = {
  recovery: 'language/src/read/recovery.ts',
  pdf: 'server/src/packet/pdf.ts',
  xlsx: 'server/src/packet/xlsx.ts',
  'serve-stdio': 'server/src/cli/commands/serve-stdio.ts',
};

const loadedApart = {
  name: 'loaded-apart',
  setup({ onLoad, onResolve }) {
    const names = Object.keys(apart).join('|');
    onResolve({ filter: new RegExp(`/(${names})\\.js$`) }, ({ path, resolveDir }) => {
      const source = relative(root, join(resolveDir, path)).replaceAll(sep, '/').replace(/js$/, 'ts');
      const [name] = Object.entries(apart).find(([, file]) => file === source) ?? [];
      return name && { path: `./${name}.cjs`, external: true };
    });
    // Langium starts when a text first has a mistake: that takes as long as checking a hundred stores.
    onLoad({ filter: /[\\/]read[\\/]read-sheet\.ts$/ }, ({ path }) => {
      const eager = "import { readMended } from './mending.js';";
      const source = sourceOf(path);
      if (!source.includes(eager))
        throw new Error(`${path} imports the mending of slips in another way than this expects.`);
      const lazy = "const readMended = (text: string) => require('./mending.js').readMended(text);";
      return { contents: source.replace(eager, lazy), loader: 'ts' };
    });
  },
};

/** In CommonJS, of which V8's code can be kept (`server/bin/compiled.js`). */
const commandLine = {
  ...common,
  outdir: 'server/dist',
  outExtension: { '.js': '.cjs' },
  format: 'cjs',
  supported: { 'dynamic-import': false },
  define: { 'import.meta.url': 'bundleUrl' },
  banner: { js: "const bundleUrl = require('node:url').pathToFileURL(__filename).href;" },
};

const server = (outdir, minify) => ({
  ...common,
  plugins: [counted],
  entryPoints: {
    'server-bundle': 'server/src/main.ts',
    'wave-worker': 'server/src/waves/wave-worker.ts',
    packets: 'server/src/packet/index.ts',
  },
  // What an ES module says of itself is lost in CommonJS; the library has the same in CommonJS too.
  alias: { pdfkit: join(root, 'node_modules/pdfkit/js/pdfkit.js') },
  outdir,
  outExtension: { '.js': '.cjs' },
  format: 'cjs',
  minify,
});

const extension = {
  ...common,
  entryPoints: ['extension/src/extension.ts'],
  outfile: 'extension/dist/extension.cjs',
  format: 'cjs',
  external: ['vscode'],
  minify: true,
};

const panels = 'extension/src/panels';
const pages = {
  ...common,
  entryPoints: Object.fromEntries(
    readdirSync(join(root, panels))
      .map((name) => [name, `${panels}/${name}/page/main.ts`])
      .filter(([, entry]) => existsSync(join(root, entry))),
  ),
  outdir: 'extension/dist/pages',
  platform: 'browser',
  // The oldest editor that the extension runs in, VS Code 1.101, is built on Chromium 134.
  target: 'chrome134',
  format: 'iife',
  minify: true,
  sourcemap: false,
};

/** In bytes: every command reads all of it. */
const largestProgram = 2e6;

/** The command line begins with the hash of its text, by which code that was kept of it is known to be of this one. */
function identified({ path, contents }) {
  if (basename(path) !== 'cli.cjs') return { path, contents };
  if (largestProgram < contents.length) throw new Error('Something that most commands do without is part of cli.cjs.');
  const hash = createHash('sha256').update(contents).digest('hex');
  return { path, contents: Buffer.concat([Buffer.from(`/* ${hash} */`), contents]) };
}

/**
 * Writes what was built and then removes what an earlier build left.
 * Programs that are running meanwhile keep finding their chunks until the new entry is in place, because entries come
 * last and a file is replaced in one step.
 */
function publish(folder, files) {
  const isChunk = (file) => dirname(file.path) !== folder;
  const chunksFirst = [...files.filter(isChunk), ...files.filter((file) => !isChunk(file))];
  for (const { path, contents } of chunksFirst) {
    const fresh = `${path}.${process.pid}.new`;
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(fresh, contents);
    renameSync(fresh, path);
  }
  const built = new Set(files.map((file) => file.path));
  for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true })) {
    const path = join(entry.parentPath, entry.name);
    if (entry.isFile() && !built.has(path) && !/\.(vsix|new)$/.test(path)) {
      rmSync(path, { force: true });
    }
  }
}

try {
  const results = await Promise.all([
    build({ ...commandLine, plugins: [loadedApart, counted], entryPoints: { cli: 'server/src/cli/main.ts' } }),
    build({ ...commandLine, plugins: [counted], entryPoints: apart }),
    build(server('server/dist', false)),
    build(server('extension/dist', true)),
    build(extension),
    build(pages),
  ]);
  const files = results.flatMap((result) => result.outputFiles.map(identified));
  for (const folder of ['server/dist', 'extension/dist'].map((name) => join(root, name))) {
    const starter = { path: join(folder, 'server.cjs'), contents: serverStarter };
    const terms = { path: join(folder, 'font-terms.txt'), contents: fontTerms };
    publish(folder, [...files.filter((file) => file.path.startsWith(folder + sep)), starter, terms]);
  }
  if (results.some((result) => result.warnings.length > 0)) {
    process.exitCode = 1;
  }
} catch (error) {
  // esbuild has printed its own messages; anything else has to be seen whole.
  if (!error.errors) {
    throw error;
  }
  process.exitCode = 1;
}
