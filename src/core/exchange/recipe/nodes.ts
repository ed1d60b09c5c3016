/** Recipe data as a page holds it: objects with properties, of JSON-LD or of marked-up elements. */
export type Node = { [property: string]: Value };
export type Value = string | number | boolean | null | Value[] | Node;

export const isNode = (value: Value | undefined): value is Node =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** A value as a list, whatever it is: nothing is an empty one; JSON-LD may say that it is one. */
export const listOf = (value: Value | undefined): Value[] => {
  if (value === undefined || value === null) return [];
  if (Array.isArray(value)) return value;
  const listed = isNode(value) ? (value['@list'] ?? value['@set']) : undefined;
  return listed === undefined ? [value] : listOf(listed);
};

/** The types of a node without their vocabulary's address. */
export const typesOf = (node: Node): string[] =>
  listOf(node['@type'])
    .filter((type) => typeof type === 'string')
    .map((type) =>
      type.slice(Math.max(type.lastIndexOf('/'), type.lastIndexOf('#'), type.lastIndexOf(':')) + 1),
    );

export const isType = (node: Node, ...types: string[]): boolean =>
  typesOf(node).some((type) => types.includes(type));

const mostNodes = 200_000;
const deepest = 60;

/** Every node inside a value, outermost first, each once; beyond a depth no recipe has, none is looked for. */
export const nodesIn = (value: Value): Node[] => {
  const found: Node[] = [];
  const open: { value: Value; depth: number }[] = [{ value, depth: 0 }];
  while (open.length > 0 && found.length < mostNodes) {
    const { value: one, depth } = open.pop()!;
    if (isNode(one)) found.push(one);
    if (typeof one !== 'object' || one === null || depth >= deepest) continue;
    const inner = Array.isArray(one) ? one : Object.values(one);
    for (let at = inner.length - 1; at >= 0; at--) open.push({ value: inner[at]!, depth: depth + 1 });
  }
  return found;
};

/** A property by its own name or with the vocabulary's prefix. */
export const property = (node: Node, ...names: string[]): Value | undefined => {
  for (const name of names)
    for (const spelt of [name, `schema:${name}`, `https://schema.org/${name}`, `http://schema.org/${name}`])
      if (Object.hasOwn(node, spelt) && node[spelt] !== null) return node[spelt];
  return undefined;
};

/** Follows {"@id": "#step1"} to the node of that name; anything else stays as it is. */
export const resolver = (nodes: readonly Node[]): ((value: Value) => Value) => {
  const named = new Map<string, Node>();
  for (const node of nodes) {
    const id = node['@id'];
    if (typeof id === 'string' && Object.keys(node).length > 1 && !named.has(id)) named.set(id, node);
  }
  return (value) => {
    if (!isNode(value) || Object.keys(value).length !== 1) return value;
    const id = value['@id'];
    return typeof id === 'string' ? (named.get(id) ?? value) : value;
  };
};
