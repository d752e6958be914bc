/**
 * Makes a checkout ready to run: installs the dependencies when `node_modules` does not match the lock file.
 *
 * This file alone may be started by a Node older than the repository needs, so it uses nothing newer than Node 20.
 * An install brings the repository's own Node (`node_modules/.bin/node`), which npm puts first on the path of every
 * script. A shell remembers where it found `node`, so the scripts that follow run in a new one (see package.json).
 */
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync, rmSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const ownNode = `${root}node_modules/.bin/node${process.platform === 'win32' ? '.cmd' : ''}`;
const oldestNode = [22, 12];

/** The `packages` table of a lock file, or an empty one when the file is missing or cut short. */
function readPackages(path) {
  try {
    return JSON.parse(readFileSync(`${root}${path}`, 'utf8')).packages ?? {};
  } catch {
    return {};
  }
}

/** Whether two entries of a lock file stand for the same package. */
function isSamePackage(wanted, present) {
  return (
    wanted.version === present.version && wanted.integrity === present.integrity && wanted.resolved === present.resolved
  );
}

/**
 * Whether what npm recorded in `node_modules` is what the lock file asks for.
 * npm writes its record last, so an interrupted install has none and counts as missing. Packages for other platforms
 * are optional and may be absent.
 */
function isInstalled() {
  const wanted = readPackages('package-lock.json');
  const present = readPackages('node_modules/.package-lock.json');
  const names = Object.keys(wanted).filter((name) => name !== '');
  const complete = names.every((name) =>
    present[name] ? isSamePackage(wanted[name], present[name]) : wanted[name].optional === true,
  );
  return names.length > 0 && complete && Object.keys(present).every((name) => wanted[name] !== undefined);
}

/** Runs `npm ci` without a word unless it fails. No install script is run, because none is needed. */
function install() {
  console.log('Installing the dependencies (once, about half a minute) ...');
  const options = ['ci', '--ignore-scripts', '--no-audit', '--no-fund', '--loglevel=error'];
  const npm = process.env.npm_execpath;
  const run = { cwd: root, encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'] };
  const result = npm?.endsWith('.js')
    ? spawnSync(process.execPath, [npm, ...options], run)
    : spawnSync('npm', options, { ...run, shell: process.platform === 'win32' });
  if (result.status !== 0) {
    process.stderr.write(`${result.stdout ?? ''}${result.stderr ?? ''}`);
    stop(`The dependencies could not be installed (npm ci: ${result.error?.message ?? `status ${result.status}`}).`);
  }
}

/**
 * Makes sure that the scripts after this one find a Node that is new enough: the repository's own, or else the one
 * that runs now. A packaged Node that cannot run here (another C library, say) would stand in the way, so it goes.
 */
function settleNode() {
  const runs = (node) => spawnSync(node, ['--version'], { shell: process.platform === 'win32' }).status === 0;
  if (existsSync(ownNode) && !runs(ownNode)) {
    rmSync(ownNode);
  }
}

function isNewEnough(version) {
  const [major = 0, minor = 0] = version.split('.').map(Number);
  return major > oldestNode[0] || (major === oldestNode[0] && minor >= oldestNode[1]);
}

function stop(message) {
  console.error(message);
  process.exit(1);
}

if (!isInstalled()) {
  install();
  settleNode();
}
if (!existsSync(ownNode) && !isNewEnough(process.versions.node)) {
  stop(
    `Node ${oldestNode.join('.')} or later is needed; this is ${process.versions.node}, and no packaged one runs on ` +
      `${process.platform}-${process.arch}. Install a newer Node from https://nodejs.org and start again.`,
  );
}
