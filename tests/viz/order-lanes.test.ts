import { describe, expect, it } from 'vitest';
import { bearersOf, devicesOf } from '../../packages/viz/src/model/bearers.js';
import { lanesAt } from '../../packages/viz/src/model/depth.js';
import { GEAR, lanes } from '../../packages/viz/src/model/lanes.js';
import { emptyStore, pictureOf } from './opened.js';
import { TEXT } from './demo.js';

const store = emptyStore();
store.open({ file: 'hedgelark.yaml', text: TEXT });
store.chooseCard('piston-seal');
const picture = pictureOf(store);
const names = new Set([...picture.devices.map((d) => d.name), ...picture.units.map((u) => u.name)]);

describe('a flag', () => {
  it('that names a node is pinned on a jack that the node joins', () => {
    const index = picture.flags.findIndex(
      (f) => f.rule === 'cavitation' && f.severity !== 'note' && !names.has(f.devices[0]),
    );
    const flag = picture.flags[index];
    const lane = lanes(picture).find((l) => l.flags.includes(index));
    const part = picture.circuit.parts.find((p) => p.name === lane?.name);
    expect(part?.role).toBe('actuator');
    expect(part?.ports.map((p) => p.node)).toContain(flag.devices[0]);
    // It is in sight however few lanes are shown.
    expect(lanesAt(picture, 'gear', { kind: 'none' }).map((l) => l.name)).toContain(lane?.name);
  });

  it('is pinned once, on the first of its devices; on the whole gear only when it has none', () => {
    const all = lanes(picture);
    picture.flags.forEach((f, i) => {
      const homes = all.filter((l) => l.flags.includes(i)).map((l) => l.name);
      const first = devicesOf(picture, f).find((d) => all.some((l) => l.name === d));
      expect(homes, f.title).toEqual([first ?? GEAR]);
    });
    expect(all.find((l) => l.name === GEAR)?.flags).toEqual([]);
  });

  it('that names a part of a device is about the device', () => {
    const [device] = picture.devices;
    expect(bearersOf(picture, `${device.name}.head`)).toEqual([device.name]);
    expect(bearersOf(picture, 'left')).toEqual(['left']);
    expect(bearersOf(picture, 'nothing-of-it')).toEqual(['nothing-of-it']);
  });
});
