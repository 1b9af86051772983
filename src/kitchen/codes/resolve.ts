/** Which marker or item a touched code stands for. */
import type { Clock } from '../../terms/dates.js';
import { itemWithMarker } from '../markers.js';
import type { Item, Kitchen, Marker } from '../model.js';
import { readOwnAddress, type OwnAddress } from './own-address.js';
import { codeKey, readCode, type Code } from './read-code.js';

export interface Resolved {
  readonly code: Code;
  readonly marker: Marker | null;
  /** Living: what the marker stands on, or what bears the code itself; newest first. */
  readonly items: readonly Item[];
  /** Without a living one: what bore the code last and is gone, to be bought again. */
  readonly lastGone: Item | null;
}

const resolveOwn = (kitchen: Kitchen, code: Code, own: OwnAddress): Resolved => {
  const marker = own.kind === 'marker' ? (kitchen.markers.get(own.id) ?? null) : null;
  const item = own.kind === 'item' ? kitchen.items.get(own.id) : marker && itemWithMarker(kitchen, marker.id);
  const living = !!item && item.gone === null;
  return { code, marker, items: living ? [item] : [], lastGone: living ? null : (item ?? null) };
};

/** Reads a code and looks it up. With neither marker nor items it is new here: putting away starts from it. */
export const resolveCode = (kitchen: Kitchen, text: string, clock: Clock): Resolved => {
  const code = readCode(text, clock);
  const own = readOwnAddress(code.kind === 'link' ? code.uri : text);
  if (own !== null) return resolveOwn(kitchen, code, own);
  const key = codeKey(code);
  const bears = (codes: readonly string[] | undefined): boolean =>
    codes?.some((one) => one === text || codeKey(readCode(one, clock)) === key) ?? false;
  const marker = [...kitchen.markers.values()].find(({ codes }) => bears(codes)) ?? null;
  const on = marker && itemWithMarker(kitchen, marker.id);
  const bearing = [...kitchen.items.values()]
    .filter(({ codes }) => bears(codes))
    .sort((a, b) => (a.addedAt < b.addedAt ? 1 : -1));
  const items = on ? [on] : bearing.filter(({ gone }) => gone === null);
  const gone = [...bearing].sort((a, b) => ((a.gone?.at ?? '') < (b.gone?.at ?? '') ? 1 : -1))[0];
  return { code, marker, items, lastGone: items.length === 0 ? (gone ?? null) : null };
};
