/** Why a forecast was kept: it was printed on a slip, a visit was agreed by it, or it stood just before a strip-down opened the part. */
export type KeptWhy = 'slip' | 'plan' | 'strip-down';
