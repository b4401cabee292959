/** Prints `N passed, N failed` from the report that the last `npm test` left; 1 if none passed. */
import { existsSync, readFileSync } from 'node:fs';
import { ROOT, stop } from './setup.mjs';

const file = `${ROOT}tests/artefacts/vitest.json`;
if (!existsSync(file)) stop('No test was run.');
const report = JSON.parse(readFileSync(file, 'utf8'));
// A suite that could not be loaded has no tests to count; it counts as one failure.
const broken = report.testResults.filter(
  ({ status, assertionResults }) => status === 'failed' && assertionResults.length === 0,
).length;
const failed = report.numFailedTests + broken;
const skipped = report.numPendingTests + report.numTodoTests;
const tail = skipped > 0 ? `, ${skipped} skipped` : '';
console.log(`${report.numPassedTests} passed, ${failed} failed${tail}`);
process.exitCode = failed === 0 && report.numPassedTests > 0 ? 0 : 1;
