import type { Brand } from './brand.ts';

/** What the meter in the machine shows. */
export type DialHours = Brand<number, 'DialHours'>;
/** Hours the machine has run since new, through meter changes and rollovers. */
export type MachineHours = Brand<number, 'MachineHours'>;
/** Machine hours over which a part was fitted. */
export type PartHours = Brand<number, 'PartHours'>;
/** Part hours times the share of them in which the assembly works; the wear model's time. */
export type WorkedHours = Brand<number, 'WorkedHours'>;

export const dialHours = (value: number): DialHours => value as DialHours;
export const machineHours = (value: number): MachineHours => value as MachineHours;
export const partHours = (value: number): PartHours => value as PartHours;
export const workedHours = (value: number): WorkedHours => value as WorkedHours;
