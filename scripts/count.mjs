/** Prints `N passed, N failed` from the report that the last `npm test` left; 1 if none passed. */
import { readFileSync } from 'node:fs';
import { ROOT } from './setup.mjs';

const report = JSON.parse(readFileSync(`${ROOT}tests/artefacts/vitest.json`, 'utf8'));
// A suite that could not be loaded has no tests to count; it counts as one failure.
const broken = report.testResults.filter(
  ({ status, assertionResults }) => status === 'failed' && assertionResults.length === 0,
).length;
const failed = report.numFailedTests + broken;
const skipped = report.numPendingTests + report.numTodoTests;
const tail = skipped > 0 ? `, ${skipped} skipped` : '';
console.log(`${report.numPassedTests} passed, ${failed} failed${tail}`);
process.exitCode = failed === 0 && report.numPassedTests > 0 ? 0 : 1;
