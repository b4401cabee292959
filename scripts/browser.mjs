/** Finds a browser of the Chromium family that is already on the machine; installs nothing. */
import { accessSync, constants } from 'node:fs';
import { delimiter, join } from 'node:path';

const NAMES = [
  'chromium',
  'chromium-browser',
  'google-chrome',
  'google-chrome-stable',
  'chrome',
  'microsoft-edge',
  'microsoft-edge-stable',
  'msedge',
];

/** Where the installers of macOS and Windows put them. */
function usualPlaces() {
  if (process.platform === 'darwin') {
    return [
      '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
      '/Applications/Chromium.app/Contents/MacOS/Chromium',
      '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
    ];
  }
  if (process.platform === 'win32') {
    const { PROGRAMFILES, LOCALAPPDATA } = process.env;
    const bases = [PROGRAMFILES, process.env['PROGRAMFILES(X86)'], LOCALAPPDATA].filter(Boolean);
    return bases.flatMap((base) => [
      join(base, 'Google/Chrome/Application/chrome.exe'),
      join(base, 'Chromium/Application/chrome.exe'),
      join(base, 'Microsoft/Edge/Application/msedge.exe'),
    ]);
  }
  return [];
}

function runs(path) {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/** Path of the program: `CHROME_PATH` first, then the search path, then usual places. */
export function findBrowser() {
  const named = process.env.CHROME_PATH;
  if (named) return runs(named) ? named : undefined;
  const folders = (process.env.PATH ?? '').split(delimiter).filter(Boolean);
  const end = process.platform === 'win32' ? '.exe' : '';
  const onPath = NAMES.flatMap((name) => folders.map((folder) => join(folder, name + end)));
  return [...onPath, ...usualPlaces()].find(runs);
}

export const MISSING = `No Chrome, Edge or Chromium was found, so the tests of the page cannot run.
Install one of them, or set CHROME_PATH to the path of its program.`;
