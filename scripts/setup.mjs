/**
 * Brings a checkout to the state in which it can run: packages as the lock file says, core
 * compiled, page built. Only Node's own modules, since nothing else is there at first.
 * Also a command: `node scripts/setup.mjs [core]`, and for npm's own install `prepare`, which
 * builds core only.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

export const ROOT = fileURLToPath(new URL('..', import.meta.url));
const LOCK = `${ROOT}package-lock.json`;
const INSTALLED = `${ROOT}node_modules/.package-lock.json`;
const NODE_LEAST = [20, 19];

/** Runs a program in the checkout, its output shown; its exit code. */
export function run(program, args, options = {}) {
  const { status, error } = spawnSync(program, args, { cwd: ROOT, stdio: 'inherit', ...options });
  if (error) throw error;
  return status ?? 1;
}

/** Runs a package's program by Node, so that no shell and no registry look-up comes in. */
export function runTool(path, args, options) {
  return run(process.execPath, [`${ROOT}node_modules/${path}`, ...args], options);
}

/** True when every package of the lock file is there in its version. */
export function isInstalled() {
  if (!existsSync(INSTALLED)) return false;
  const wanted = JSON.parse(readFileSync(LOCK, 'utf8')).packages;
  const found = JSON.parse(readFileSync(INSTALLED, 'utf8')).packages;
  return Object.entries(wanted).every(([path, { version, optional }]) => {
    if (path === '' || (optional && !found[path])) return true;
    return found[path]?.version === version;
  });
}

export function install() {
  const [major, minor] = process.versions.node.split('.').map(Number);
  if (major < NODE_LEAST[0] || (major === NODE_LEAST[0] && minor < NODE_LEAST[1])) {
    stop(`Node ${NODE_LEAST.join('.')} or later is needed; this is ${process.versions.node}.`);
  }
  if (isInstalled()) return;
  console.log('Installing the packages named in package-lock.json ...');
  // npm hands its own path down when it runs a script; on Windows `npm` is a batch file.
  const npm = process.env.npm_execpath;
  const code = npm
    ? run(process.execPath, [npm, 'ci'])
    : run('npm', ['ci'], { shell: process.platform === 'win32' });
  if (code !== 0) stop('npm ci did not succeed; its message is above.');
}

export function buildCore() {
  if (runTool('typescript/bin/tsc', ['-b', 'packages/core']) !== 0) {
    stop('packages/core does not compile; the messages are above.');
  }
  const bundle = ['-c', '--log-level', 'warn'];
  const quiet = { cwd: `${ROOT}packages/core`, stdio: ['ignore', 'ignore', 'inherit'] };
  if (runTool('rolldown/bin/cli.mjs', bundle, quiet) !== 0) {
    stop('packages/core cannot be bundled; the messages are above.');
  }
}

export function buildPage() {
  const vite = ['build', '--logLevel', 'warn'];
  if (runTool('vite/bin/vite.js', vite, { cwd: `${ROOT}packages/viz` }) !== 0) {
    stop('The page does not build; the messages are above.');
  }
}

export function stop(message) {
  console.error(`\n${message}`);
  process.exit(1);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const [what] = process.argv.slice(2);
  if (what !== 'prepare') install();
  buildCore();
  if (what === undefined) buildPage();
}
