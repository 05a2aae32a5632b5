/** Members of a list in the text of a design put in, moved and doubled; comments go with them. */
import { isCollection, isMap, isScalar, isSeq, type Node } from 'yaml';
import type { Path } from '../../design/problems.ts';
import { documentOf, nodeAt, type Plain, pairOf } from '../../saved/document.ts';

export type Change =
  | { readonly put: Plain; readonly at: number }
  | { readonly move: number; readonly to: number }
  /** The double has this under the key by which members go. */
  | { readonly double: number; readonly key: string; readonly name: string };

/** The text with the change; as it was where no list stands at the path. */
export function rearranged(text: string, path: Path, change: Change): string {
  const doc = documentOf(text);
  const list = nodeAt(doc, path);
  if (!isSeq(list)) return text;
  if ('put' in change) {
    const node = doc.createNode(change.put) as Node;
    if (isCollection(node)) node.flow = list.flow === true || short(change.put);
    list.items.splice(change.at, 0, node);
  } else if ('move' in change) {
    const [node] = list.items.splice(change.move, 1);
    list.items.splice(change.to, 0, node);
  } else {
    const node = (list.items[change.double] as Node).clone() as Node;
    // What stands above the first says something of it alone.
    node.commentBefore = null;
    if (isMap(node)) {
      const own = pairOf(node, change.key)?.value;
      if (isScalar(own)) own.value = change.name;
    }
    list.items.splice(change.double + 1, 0, node);
  }
  return doc.toString({ lineWidth: 0 });
}

/** Some plain values stand on one line. */
const short = (value: Plain): boolean =>
  typeof value === 'object' &&
  Object.values(value).length <= 6 &&
  Object.values(value).every((one) => typeof one !== 'object');
