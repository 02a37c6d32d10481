import { parseAst } from 'vite';

export interface LongFunction {
  readonly name: string;
  readonly lines: number;
  readonly kind: 'component' | 'function';
}

interface Node {
  readonly type: string;
  readonly start: number;
  readonly end: number;
  readonly [key: string]: unknown;
}

const isNode = (value: unknown): value is Node =>
  typeof value === 'object' && value !== null && typeof (value as Node).type === 'string';

const functionTypes = new Set(['FunctionDeclaration', 'FunctionExpression', 'ArrowFunctionExpression']);

const nameOf = (node: unknown): string | null => {
  if (!isNode(node)) return null;
  if (typeof node['name'] === 'string') return node['name'];
  return nameOf(node['id'] ?? node['key'] ?? node['left'] ?? null);
};

/** Every function of a source with its name and how many lines it has, signature and braces included. */
export function functionsOf(file: string, text: string): readonly LongFunction[] {
  const lineAt = lineCounter(text);
  const found: LongFunction[] = [];
  const walk = (node: Node, parents: readonly Node[]): void => {
    if (functionTypes.has(node.type)) {
      const name = nameOf(node['id']) ?? parents.map(nameOf).find((each) => each !== null) ?? 'unnamed';
      found.push({
        name,
        lines: lineAt(node.end) - lineAt(node.start) + 1,
        // a component is a function of a .tsx file whose name begins with a capital
        kind: file.endsWith('.tsx') && /^[A-Z]/.test(name) ? 'component' : 'function',
      });
    }
    // the nearest thing with a name names a function that has none; a function's own inside does not
    const above = functionTypes.has(node.type) ? [] : [node, ...parents];
    for (const child of Object.values(node).flat()) if (isNode(child)) walk(child, above);
  };
  walk(parseAst(text, { lang: file.endsWith('.tsx') ? 'tsx' : 'ts' }) as unknown as Node, []);
  return found;
}

function lineCounter(text: string): (offset: number) => number {
  const starts = [0];
  for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) starts.push(at + 1);
  return (offset) => {
    let [low, high] = [0, starts.length];
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if ((starts[middle] ?? 0) <= offset) low = middle;
      else high = middle;
    }
    return low + 1;
  };
}
