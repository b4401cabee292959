/**
 * `npm start`: sets up what is missing, builds, serves the page on this machine only and
 * prints its address. `npm start -- --open` also opens it; `--port 8080` chooses the port.
 */
import { buildCore, buildPage, install, ROOT, runTool } from './setup.mjs';

install();
console.log('Building ...');
buildCore();
buildPage();
process.exitCode = runTool('vite/bin/vite.js', ['preview', ...process.argv.slice(2)], {
  cwd: `${ROOT}packages/viz`,
});
