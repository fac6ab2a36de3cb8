/**
 * A thread was ended because its heap was full: nothing else came to harm.
 * @source Node.js documentation, "Errors", ERR_WORKER_OUT_OF_MEMORY
 */
export const ranOutOfMemory = (thrown: Error): boolean =>
  'code' in thrown && thrown.code === 'ERR_WORKER_OUT_OF_MEMORY';
