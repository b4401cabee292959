/**
 * ISO 1219-1 drawing data: which symbol, and where its ports lie in symbol units (the
 * standard's 2.5 mm module), origin at the symbol's centre, x right, y up.
 */
export interface DrawingSymbol {
  readonly name:
    | 'pump'
    | 'supply'
    | 'hand-pump'
    | 'relief'
    | 'check'
    | 'one-way-restrictor'
    | 'orifice'
    | 'line'
    | 'filter'
    | 'reservoir'
    | 'selector'
    | 'sequence-valve'
    | 'cylinder'
    | 'lock'
    | 'leg'
    | 'door'
    | 'compensated-pump'
    | 'unloader'
    | 'power-pack'
    | 'open-centre-selector'
    | 'hose'
    | 'segmented-line'
    | 'pressure-sequence-valve'
    | 'priority-valve'
    | 'thermal-relief'
    | 'accumulator'
    | 'single-acting-cylinder'
    | 'flow-regulator'
    | 'manual-valve'
    | 'solenoid-valve'
    | 'solenoid-selector'
    | 'position-switch'
    | 'pressure-switch'
    | 'controller'
    | 'spring'
    | 'chain'
    | 'brace'
    | 'linkage'
    | 'quick-disconnect'
    | 'other';
  readonly size: readonly [number, number];
  readonly ports: Readonly<Record<string, readonly [number, number]>>;
}
