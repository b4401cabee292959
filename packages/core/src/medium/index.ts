export * from './oil.js';
export * from './air.js';
export * from './orifice.js';
export * from './line-loss.js';
export * from './line-table.js';
export * from './content.js';
export * from './cushion.js';
export * from './gas.js';
