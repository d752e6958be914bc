/**
 * Langium's syntax tree as the plain tree: the same data that the generated reader gives, without parents, syntax
 * nodes or parser types. Places come from the syntax nodes; what recovery left out is undefined.
 */
import type { AstNode } from 'langium';
import type { Sheet } from '../generated/reader.js';

/** Converts a parsed sheet; never throws, whatever recovery made of the text. */
export function plainSheet(root: AstNode): Sheet {
  return plain(root, 0) as unknown as Sheet;
}

function plain(node: AstNode, fallback: number): Record<string, unknown> {
  const start = node.$cstNode?.offset ?? fallback;
  const result: Record<string, unknown> = { type: node.$type, start, end: node.$cstNode?.end ?? start };
  for (const [name, value] of Object.entries(node)) {
    if (name.startsWith('$')) continue;
    if (Array.isArray(value)) result[name] = value.filter(isNode).map((child) => plain(child, start));
    else result[name] = isNode(value) ? plain(value, start) : value;
  }
  return result;
}

const isNode = (value: unknown): value is AstNode => typeof value === 'object' && value !== null && '$type' in value;
