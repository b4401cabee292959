/**
 * `npm test`: sets up what is missing, builds what tests run against, then runs every suite.
 * Arguments go to vitest: `npm test -- --project core`, `npm test -- tests/house`.
 */
import { mkdirSync } from 'node:fs';
import { findBrowser, MISSING } from './browser.mjs';
import { buildCore, buildPage, install, ROOT, runTool } from './setup.mjs';

install();
buildCore();
buildPage();

// Screenshots, and vitest's report, from which the closing line of .ci/run is counted.
const artefacts = `${ROOT}tests/artefacts`;
mkdirSync(artefacts, { recursive: true });
const report = [
  '--reporter=default',
  '--reporter=json',
  `--outputFile.json=${artefacts}/vitest.json`,
];

const browser = findBrowser();
if (browser) process.env.CHROME_PATH = browser;
else console.error(`\n${MISSING}\nThe other suites run now.\n`);

const suites = browser ? [] : ['--project', '!viz'];
const code = runTool('vitest/vitest.mjs', ['run', ...report, ...suites, ...process.argv.slice(2)]);
if (!browser) console.error(`\n${MISSING}\nSo this run does not count as passed.`);
process.exitCode = browser ? code : 1;
