/** A machine as it is drawn by: what it is called, which changes with neither numbering nor order of entry. */
export type DrawnMachine = {
  machineId: number;
  name: string;
  serial: string;
  /** classes of which a part of it was ever measured */
  measuredClasses: ReadonlySet<string>;
};
