/** From a formula to functions, once for all members of a quantity. */
import type { Reference } from '../basis/formula.ts';
import { call } from './calls.ts';
import { literal, type Node, numeric } from './node.ts';
import { negative, operation } from './operators.ts';
import { parse, type Tree } from './parse.ts';

/** `reference` says what a name stands for. Throws on what is outside the notation or the dialect. */
export const compile = (formula: string, reference: (reference: Reference) => Node): Node =>
  compileTree(parse(formula), reference);

/** The same of a part of a formula; `each` is told what every piece became. */
export function compileTree(
  tree: Tree,
  reference: (reference: Reference) => Node,
  each?: (piece: Tree, node: Node) => void,
): Node {
  const node = (tree: Tree): Node => {
    const made = becomes(tree);
    each?.(tree, made);
    return made;
  };
  const becomes = (tree: Tree): Node => {
    switch (tree.kind) {
      case 'number':
        return numeric(() => tree.value);
      case 'text':
        return literal(tree.value);
      case 'negative':
        return negative(node(tree.of));
      case 'operation':
        return operation(tree.sign, node(tree.left), node(tree.right));
      case 'call':
        return call(tree.name, tree.args.map(node));
      case 'reference':
        return reference(tree.reference);
    }
  };
  return node(tree);
}
