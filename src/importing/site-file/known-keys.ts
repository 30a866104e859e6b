import { siteFileJsonSchema } from './json-schema.ts';

interface SchemaNode {
  readonly properties?: Readonly<{ [key: string]: SchemaNode }>;
  readonly items?: SchemaNode;
  readonly additionalProperties?: SchemaNode | boolean;
  readonly anyOf?: readonly SchemaNode[];
}

/** Keys that the site file knows at `path`. */
export function keysAt(path: readonly PropertyKey[]): string[] {
  let nodes: SchemaNode[] = [siteFileJsonSchema() as SchemaNode];
  for (const part of path) {
    nodes = nodes.flatMap(alternatives).flatMap((node) => {
      const next = typeof part === 'number' ? node.items : node.properties?.[String(part)];
      return next === undefined ? [] : [next];
    });
  }
  return nodes.flatMap(alternatives).flatMap((node) => Object.keys(node.properties ?? {}));
}

function alternatives(node: SchemaNode): readonly SchemaNode[] {
  return node.anyOf ?? [node];
}
