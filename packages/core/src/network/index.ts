export { Network } from './network.js';
export type { InstanceFrame } from './frame.js';
export type { Plan, NodePlan, CoordinatePlan, InstancePlan } from './plan.js';
export type { MemberPlan } from './member.js';
export { spline, type Curve } from './table.js';
export { OUTSIDE } from './plan.js';
