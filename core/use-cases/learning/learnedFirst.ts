import type { Context } from '../context.ts';
import { learnedOnce } from './shopLearning.ts';

/**
 * A handler that needs what the classes have taught. Of a shop of which nothing was ever learned whoever asks for it waits,
 * and nobody else: it is learned in a thread meanwhile.
 */
export const learnedFirst =
  <Request, Reply>(handler: (context: Context, request: Request) => Reply | Promise<Reply>) =>
  async (context: Context, request: Request): Promise<Reply> => {
    await learnedOnce(context);
    return handler(context, request);
  };
