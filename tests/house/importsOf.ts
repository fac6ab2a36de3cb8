import { parseSync } from 'vite';

export type FoundImport = {
  /** as it stands in the file; null: put together at run time, so that nobody can say what it is */
  name: string | null;
  /** nothing of it is left when the program runs */
  typeOnly: boolean;
};

type Node = { type: string; [field: string]: unknown };

/**
 * Every module a file names: import, export from, import(), require(), types by import('...') and workers by
 * new URL('./x.ts', import.meta.url). Read by a parser: a name in a comment or a text is none.
 */
export function importsOf(file: string, source: string): FoundImport[] {
  const { program, errors } = parseSync(file, source);
  if (errors.length > 0) throw new Error(`${file} cannot be read: ${errors[0]?.message}`);
  const found: FoundImport[] = [];
  walk(program as unknown as Node, (node) => {
    const named = importIn(node);
    if (named) found.push(named);
  });
  return found;
}

function importIn(node: Node): FoundImport | undefined {
  switch (node.type) {
    case 'ImportDeclaration':
      return { name: literal(node.source), typeOnly: isTypeOnly(node, 'importKind') };
    case 'ExportNamedDeclaration':
    case 'ExportAllDeclaration':
      return node.source ? { name: literal(node.source), typeOnly: isTypeOnly(node, 'exportKind') } : undefined;
    case 'ImportExpression':
      return { name: literal(node.source), typeOnly: false };
    case 'TSImportType':
      return { name: literal(node.source), typeOnly: true };
    case 'TSExternalModuleReference':
      return { name: literal(node.expression), typeOnly: false };
    case 'CallExpression':
      return (node.callee as Node).name === 'require' ? { name: firstArgument(node), typeOnly: false } : undefined;
    case 'NewExpression': {
      const name = (node.callee as Node).name === 'URL' ? firstArgument(node) : null;
      return name?.match(/^\.\.?\/.*\.[cm]?tsx?$/) ? { name, typeOnly: false } : undefined;
    }
    default:
      return undefined;
  }
}

function isTypeOnly(node: Node, kind: 'importKind' | 'exportKind'): boolean {
  const specifiers = (node.specifiers ?? []) as Node[];
  return node[kind] === 'type' || (specifiers.length > 0 && specifiers.every((one) => one[kind] === 'type'));
}

const literal = (node: unknown): string | null =>
  (node as Node | null)?.type === 'Literal' ? String((node as Node).value) : null;

const firstArgument = (node: Node): string | null => literal((node.arguments as Node[])[0]);

function walk(node: unknown, visit: (node: Node) => void): void {
  if (Array.isArray(node)) for (const each of node) walk(each, visit);
  else if (typeof node === 'object' && node !== null) {
    if ('type' in node && typeof node.type === 'string') visit(node as Node);
    for (const field of Object.values(node)) walk(field, visit);
  }
}
