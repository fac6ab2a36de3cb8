/**
 * The file a thread starts from: beside whoever starts it as the sources stand; beside the one file of the built program under
 * the same name.
 * @param starter `import.meta.url` of whoever starts it
 */
export const threadFile = (name: string, starter: string): URL =>
  new URL(`./${name}.${starter.endsWith('.ts') ? 'ts' : 'js'}`, starter);
