/** The table of parameters: how they are written, their units and ranges, defaults and reasons. */
import { code, kebab, plain, table } from './markdown.mjs';

/** A value in each system of units, without repeating what reads alike. */
function inAll(core, quantity, show) {
  const texts = ['si', 'metric', 'us'].map((units) =>
    show((value) => core.toDisplay(value, quantity, units).text),
  );
  return [...new Set(texts)].join('<br>');
}

function range(core, [low, high], quantity) {
  return inAll(core, quantity, (text) => `${text(low)} to ${text(high)}`);
}

function allowed(core, p) {
  switch (p.type) {
    case 'choice':
      return p.choices.map(code).join(', ');
    case 'switch':
      return `${code('yes')}, ${code('no')}`;
    case 'shape':
      return `${p.gives} against ${p.of}, a table or an expression in ${code(p.variable)}; each value ${range(core, p.range, p.gives)}`;
    case 'state-table':
      return 'states, what they drive, and what comes next';
    case 'point':
      return `two lengths, each ${range(core, p.range, 'length')}`;
    default:
      return range(core, p.range, p.quantity);
  }
}

function byDefault(core, p) {
  if (p.default === undefined) return '**required**';
  switch (p.type) {
    case 'choice':
      return code(p.default);
    case 'switch':
      return code(p.default ? 'yes' : 'no');
    case 'shape': {
      const [first] = p.default.y;
      return p.default.y.every((y) => y === first)
        ? `${inAll(core, p.gives, (text) => text(first))} throughout`
        : `a table of ${p.default.x.length} points`;
    }
    case 'point':
      return inAll(core, 'length', (text) => p.default.map(text).join(', '));
    default:
      return inAll(core, p.quantity, (text) => text(p.default));
  }
}

/** What is measured, with its SI unit. */
function quantityOf(core, p) {
  if (p.type !== undefined && p.type !== 'number') return p.type;
  const unit = core.SI_UNIT[p.quantity];
  return unit === '' ? p.quantity : `${p.quantity}, ${unit}`;
}

export function parameterTable(core, parameters) {
  return table(
    ['name', 'what it is', 'kind', 'range', 'default', 'why'],
    Object.entries(parameters).map(([name, p]) => [
      code(kebab(name)),
      plain(p.title),
      quantityOf(core, p),
      allowed(core, p),
      byDefault(core, p),
      plain(p.why),
    ]),
  );
}
