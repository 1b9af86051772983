/**
 * The address that our own labels carry: `…/this/item/<id>` and `…/this/marker/<id>`. Whichever
 * host it names, since a kitchen's computer may be reached by several names.
 */
import type { Id } from '../model.js';

export interface OwnAddress {
  readonly kind: 'item' | 'marker';
  readonly id: Id;
}

const SHAPE = /^\/this\/(item|marker)\/([^/]+)\/?$/;

/** What the address stands for, or null when it is not one of ours. */
export const readOwnAddress = (text: string): OwnAddress | null => {
  if (!URL.canParse(text)) return null;
  const found = SHAPE.exec(new URL(text).pathname);
  if (found === null) return null;
  try {
    return { kind: found[1] === 'marker' ? 'marker' : 'item', id: decodeURIComponent(found[2] ?? '') };
  } catch {
    return null;
  }
};
