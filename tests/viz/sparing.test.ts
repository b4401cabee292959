import { describe, expect, it } from 'vitest';
import { readFileSync } from 'node:fs';
import { answer } from '../../packages/viz/src/worker/answer.js';
import type { Picture, RunRequest } from '../../packages/viz/src/worker/message.js';
import { sparing, whole } from '../../packages/viz/src/worker/sparing.js';

const textOf = (name: string): string => readFileSync(`scenarios/${name}/${name}.yaml`, 'utf8');
const HEDGELARK = { file: 'hedgelark.yaml', text: textOf('hedgelark') };
const FENWREN = { file: 'fenwren.yaml', text: textOf('fenwren') };

let id = 0;
function made(request: Omit<RunRequest, 'id'>, quick = true): Picture {
  const { reply } = answer({ ...request, id: (id += 2) }, { quick });
  if (reply.kind !== 'picture') throw new Error(JSON.stringify(reply));
  return reply.picture;
}

const faults = [{ fault: 'plunger-rigged-early', on: 'left-door-close-valve', severity: 0.7 }];
const edits = [{ path: 'components.left-leg-restrictor.bore', value: '2 mm' }];

describe('a picture on its way to the page', () => {
  it('arrives whole, whatever came before it', () => {
    const sequence = [
      made(HEDGELARK),
      made({ ...HEDGELARK, faults }),
      made({ ...HEDGELARK, faults }, false),
      made({ ...HEDGELARK, card: 'blow-down' }),
      made(FENWREN),
      made(HEDGELARK),
    ];
    let sent: Picture | undefined;
    let had: Picture | undefined;
    for (const picture of sequence) {
      had = whole(structuredClone(sparing(picture, sent)), had);
      expect(had).toEqual(picture);
      sent = picture;
    }
  });

  it('leaves out what is as it was, which is most of it', () => {
    const sizeOf = (what: unknown): number => JSON.stringify(what).length;
    const [first, next] = [made(HEDGELARK), made({ ...HEDGELARK, faults })];
    expect(sparing(first, undefined)).toEqual(first);
    const rest = sparing(next, first);
    expect(Object.keys(first).filter((key) => !(key in rest))).toContain('catalogue');
    expect(sizeOf({ ...rest, angles: [] })).toBeLessThan(0.4 * sizeOf({ ...next, angles: [] }));
    // The page goes on with the very objects.
    expect(whole(rest, first).outlines).toBe(first.outlines);
  });

  it('tells the part whose figure is another', () => {
    const rest = sparing(made({ ...HEDGELARK, edits }), made(HEDGELARK));
    expect(rest.circuit).toBeDefined();
    expect(rest.outlines).toBeUndefined();
  });
});
