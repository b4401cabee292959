/** The built command line as a process of its own (npm test builds it first). */
import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));
const BIN = here('../../packages/core/bin/wheelwell.js');
const DEMO = here('../../scenarios/hedgelark/hedgelark.yaml');

interface Ended {
  code: number | null;
  out: string;
  error: string;
}

/** Runs the program; `enough` closes its output after that many characters, as `head` does. */
function wheelwell(
  args: string[],
  { input = '', enough = Infinity }: { input?: string | Buffer; enough?: number } = {},
): Promise<Ended> {
  return new Promise((done, fail) => {
    const child = spawn(process.execPath, [BIN, ...args]);
    let out = '';
    let error = '';
    child.stdout.setEncoding('utf8').on('data', (text: string) => {
      out += text;
      if (out.length > enough) child.stdout.destroy();
    });
    child.stderr.setEncoding('utf8').on('data', (text: string) => (error += text));
    child.on('error', fail);
    child.on('close', (code) => {
      done({ code, out, error });
    });
    child.stdin.on('error', () => undefined);
    child.stdin.end(input);
  });
}

describe('wheelwell', () => {
  it('reads the demo and finds it in order', async () => {
    const { code, out, error } = await wheelwell(['check', DEMO]);
    expect(error).toBe('');
    expect(out).toContain('no problems found');
    expect(code).toBe(0);
  });
  it('plays a card with a rigging fault, flags it and says nothing on the error stream', async () => {
    const { code, out, error } = await wheelwell(['swing', DEMO, '--card', 'doors-early']);
    expect(error).toBe('');
    expect(out).toMatch(/FAIL {2}-\d+\.\d+ s {2}asked for: Doors wait for the gear/);
    expect(out).not.toContain('\u001b');
    expect(code).toBe(1);
  });
  it('places the problems of a text from standard input', async () => {
    const { code, out, error } = await wheelwell(['swing', '-'], {
      input: 'wheelwell: 1\ntitel: x\n',
    });
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(error).toMatch(/^<standard input>:2:\d+: .*titel/m);
  });
  it('names a file that is not there', async () => {
    const { code, error } = await wheelwell(['check', 'nowhere.yaml']);
    expect(code).toBe(2);
    expect(error).toBe('wheelwell: cannot use nowhere.yaml: no such file or folder\n');
  });
  it.each([
    ['binary', Buffer.from([0x7f, 0x45, 0x4c, 0x46, 0, 1, 2])],
    ['in UTF-16', Buffer.from('wheelwell: 1\n', 'utf16le')],
  ])('says that a file is not plain text: %s', async (_, input) => {
    const { code, out } = await wheelwell(['check', '-'], { input });
    expect(out).toMatch(/^<standard input>:1:1: this is not plain text; allowed: .*UTF-8\n$/);
    expect(code).toBe(2);
  });
  it('reads a file with Windows line ends and a byte-order mark', async () => {
    const input = `\ufeff${readFileSync(DEMO, 'utf8').replaceAll('\n', '\r\n')}`;
    const { code, out } = await wheelwell(['check', '-'], { input });
    expect(out).toContain('no problems found');
    expect(code).toBe(0);
  });
  it('says that an empty file is empty', async () => {
    const { code, out } = await wheelwell(['check', '-']);
    expect(out).toContain('there is nothing in this file; allowed: a scenario');
    expect(code).toBe(2);
  });
  it('ends quietly when its reader has seen enough', async () => {
    const { code, error } = await wheelwell(['swing', DEMO, '--csv'], { enough: 1000 });
    expect(error).toBe('');
    expect([0, 1]).toContain(code);
  });
  it('prints long output on a pipe to its end', async () => {
    const { out } = await wheelwell(['swing', DEMO, '--json', '--tolerance', 'draft']);
    expect((JSON.parse(out) as { format: string }).format).toBe('wheelwell-run');
  });
  it('prints a schema that is JSON', async () => {
    const { code, out } = await wheelwell(['schema']);
    expect(code).toBe(0);
    expect(JSON.parse(out)).toHaveProperty('properties.components');
  });
});
