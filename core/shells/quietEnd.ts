/**
 * Lets a command end quietly when whoever reads its output goes away, as `| head` does after its lines: nothing more can
 * be said, and nothing is wrong. Any other error of the output is still one.
 */
export function endQuietlyWithReader(streams: readonly NodeJS.WriteStream[] = [process.stdout, process.stderr]): void {
  for (const stream of streams)
    stream.on('error', (error: NodeJS.ErrnoException) => {
      if (error.code !== 'EPIPE') throw error;
      process.exit(0);
    });
}
