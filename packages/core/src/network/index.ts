export { Network } from './network.js';
export type { InstanceFrame } from './frame.js';
export type { Plan, NodePlan, CoordinatePlan, InstancePlan } from './plan.js';
export { OUTSIDE } from './plan.js';
