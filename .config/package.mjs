/**
 * Packs the extension into `extension/dist/fieldpair.vsix`. Needs what `build.mjs` builds, and no network.
 *
 * It packs a copy, because the licence and the changelog stand at the top of the repository and the package wants them
 * beside its own files. `extension/.vscodeignore` says which files go in.
 */
import { copyFileSync, cpSync, mkdirSync, rmSync, statSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { createVSIX } from '@vscode/vsce';

const root = fileURLToPath(new URL('..', import.meta.url));
const copy = `${root}.out/package`;
const packagePath = `${root}extension/dist/fieldpair.vsix`;

rmSync(copy, { recursive: true, force: true });
mkdirSync(copy, { recursive: true });
const leftOut = new Set(['node_modules', 'src'].map((name) => `${root}extension/${name}`));
cpSync(`${root}extension`, copy, { recursive: true, filter: (path) => !leftOut.has(path) && !path.endsWith('.vsix') });
cpSync(`${root}shared/rules`, `${copy}/rules`, { recursive: true });
copyFileSync(`${root}language/README.md`, `${copy}/language.md`);
for (const name of ['LICENSE', 'CHANGELOG.md']) {
  copyFileSync(`${root}${name}`, `${copy}/${name}`);
}
await createVSIX({ cwd: copy, packagePath, dependencies: false, allowMissingRepository: true });
rmSync(copy, { recursive: true });

const kilobytes = Math.round(statSync(packagePath).size / 1000);
console.log(
  `extension/dist/fieldpair.vsix, ${kilobytes} kB. To install it: code --install-extension extension/dist/fieldpair.vsix`,
);
