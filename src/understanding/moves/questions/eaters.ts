/**
 * Who is to eat, where nobody is named: "who can have it", "the kids", "all four of us", "somebody who can't have
 * celery". Words for people are no names: what everybody here watches for counts, or what was said that they must not.
 */
import type { Filter } from '../../../protocol/query.js';
import { is } from './asked.js';
import type { Piece } from './pieces.js';

interface Asked {
  readonly filters: readonly Filter[];
  readonly used: ReadonlySet<Piece>;
}
const nothing: Asked = { filters: [], used: new Set() };

type AllergenAt = (from: number) => { readonly length: number; readonly value: string } | null;

/** What grain holds that they must not who are named for it. */
const ofCoeliacs = 'gluten';

const about = (pieces: readonly Piece[]): boolean =>
  pieces.some(({ kind }) => kind === 'thing') || pieces.some((piece) => is(piece, 'it', 'those', 'in-it'));

/** "Someone that can't have celery", "a friend with a nut allergy", "a coeliac". */
export const forSomebody = (pieces: readonly Piece[], allergenAt: AllergenAt): Asked => {
  const at = pieces.findIndex((piece) => is(piece, 'somebody', 'coeliac'));
  if (at < 0) return nothing;
  const rest = pieces.slice(at + 1);
  const forbids = rest.find((piece) => is(piece, 'cannot', 'allergic', 'without'));
  const found = rest.flatMap((piece) => {
    if (piece.kind !== 'allergen' && piece.kind !== 'thing') return [];
    const hit = allergenAt(piece.from);
    return hit?.length === piece.to - piece.from ? [{ piece, allergen: hit.value }] : [];
  });
  const coeliac = pieces.find((piece) => is(piece, 'coeliac'));
  const said = [...(forbids ? found.map(({ allergen }) => allergen) : []), ...(coeliac ? [ofCoeliacs] : [])];
  // "A nut allergy" is of both kinds until somebody says which.
  const allergens = [...new Set(said.flatMap((one) => (one === 'tree nuts' ? [one, 'peanuts'] : [one])))];
  if (allergens.length === 0) return nothing;
  const used = new Set<Piece>([
    pieces[at]!,
    ...(coeliac ? [coeliac] : []),
    ...(forbids ? [forbids, ...found.map(({ piece }) => piece)] : []),
    // "All right for someone": for whom it is good, and not whether it keeps.
    ...pieces.filter((piece, from) => from < at && is(piece, 'can', 'good', 'suit')),
    ...pieces.filter((piece) => is(piece, 'eat')),
  ]);
  return {
    filters: [{ by: 'suits', who: { who: 'unnamed', allergens }, is: true }],
    used,
  };
};

/** "Who can have the stew", "are the kids all right with it", "what can we all eat". */
export const ofEverybody = (pieces: readonly Piece[], allergenAt: AllergenAt): Asked => {
  // "Can anyone tell me where it is" asks of no eating; "who can't have milk" asks of people and no food.
  if (pieces.some((piece) => is(piece, 'where', 'side', 'how-many', 'how-old', 'whose'))) return nothing;
  // "What is in it that folk might react to": what it holds, and not who may have it.
  if (pieces.some((piece) => is(piece, 'react')) && pieces.some((piece) => is(piece, 'what', 'any')))
    return nothing;
  const may = pieces.filter((piece) => is(piece, 'can', 'cannot', 'may', 'good', 'suit'));
  const eats = pieces.filter((piece) => is(piece, 'eat', 'have'));
  const who = pieces.find((piece, at) => {
    if (is(piece, 'everybody')) return true;
    // "Who made it", "who has had the last of it": what somebody did. "Who is it safe for": nobody does a thing.
    const then = pieces.slice(at + 1);
    const for_ = then.some((one) => is(one, 'can', 'cannot') && !is(one, 'may'));
    return (
      is(piece, 'who') &&
      // "Who can't have what in this house": of people, and what each must not have.
      !then.some((one) => is(one, 'what')) &&
      !then.some((one) => is(one, 'past-aux')) &&
      (for_ || (then.some((one) => is(one, 'may')) && then.some((one) => is(one, 'eat'))))
    );
  });
  if (!who || may.length === 0) return nothing;
  const wide = pieces.some((piece) => is(piece, 'what', 'which', 'which-one', 'any'));
  const loose =
    is(who, 'everybody') && eats.length === 0 && !may.some((piece) => is(piece, 'can', 'cannot', 'suit'));
  const forbids = may.some((piece) => is(piece, 'cannot'));
  const ofAll = wide && is(who, 'everybody') && (eats.length > 0 || forbids);
  if (loose || !(about(pieces) || ofAll)) return nothing;
  const isAllergen = (piece: Piece): boolean => allergenAt(piece.from)?.length === piece.to - piece.from;
  const foods = pieces.filter(({ kind }) => kind === 'thing' || kind === 'allergen');
  if (forbids && foods.length > 0 && foods.every(isAllergen)) return nothing;
  return {
    filters: [{ by: 'suits', who: { who: 'everybody' }, is: !forbids }],
    used: new Set<Piece>([who, ...may.filter((piece) => !is(piece, 'may') || is(piece, 'can')), ...eats]),
  };
};
