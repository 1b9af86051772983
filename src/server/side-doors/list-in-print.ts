/** The list to buy as plain text: a line each, under its section where it has one. */
import type { Purchase } from '../../kitchen/model.js';
import { amountInPrint } from '../kitchen/views.js';

/** "butter, 2 pounds" */
export const purchaseInPrint = ({ name, amount }: Purchase): string =>
  amount === null ? name : `${name}, ${amountInPrint(amount)}`;

/** @param lines by section, those of one section together, as `shoppingList` gives them */
export const listInPrint = (lines: readonly Purchase[]): string => {
  const out: string[] = [];
  let section: string | null = null;
  for (const one of lines) {
    if (one.section !== section) out.push('', ...(one.section === null ? [] : [`${one.section}:`]));
    section = one.section;
    out.push(purchaseInPrint(one));
  }
  return out.length === 0 ? '' : `${out.join('\n').trimStart()}\n`;
};
