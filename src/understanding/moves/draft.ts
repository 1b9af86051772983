/** A statement while it is put together, and what may be put into it. */
import type { Amount, Share } from '../../terms/amount.js';
import type { Deed, Mention, PlaceMention, SaidPart, Slots, Statement } from '../intents.js';

type Dates = NonNullable<Slots['dates']>;
type Kinds = keyof Dates;

export interface Draft {
  deed: Deed | null;
  /** What its verb may mean as well: "chucked in the fridge" is no throwing out. */
  or: Deed | null;
  /** "Boiled six eggs": how it was cooked, which is part of its name once it was made. */
  how?: string;
  thing: Mention | null;
  definite: boolean;
  fresh: boolean;
  amount?: Amount;
  share?: Share;
  place?: PlaceMention;
  moved?: boolean;
  from?: PlaceMention;
  parts: SaidPart[];
  dates: { -readonly [K in Kinds]?: NonNullable<Dates[K]> };
  when?: Statement['when'];
  maker?: string;
  owner?: NonNullable<Statement['owner']>;
  marker?: Mention;
  /** Said to have no marker on it. */
  unmarked: boolean;
  container?: NonNullable<Statement['container']>;
  contains: string[];
  freeFrom: string[];
  ingredients: string[];
  diets: string[];
  cautions: string[];
  notes: string[];
  /** Who did it. */
  by?: string;
  /** "Except the zucchini": none of those. */
  except?: Mention[];
  /** What it is called from now on. */
  name?: string;
  left?: Amount | Share;
  /** How many there are in all, over every place. */
  total?: Amount;
  /** "The milk is fine": said to be as it was. */
  fine: boolean;
  /** Said to stay: nothing was done to it. */
  kept: boolean;
  /** Its name is a guess: no food that anybody knows. */
  open: boolean;
  corrects: boolean;
  /** What was put away a moment ago: "the eggs I just put in". */
  newest: boolean;
  /** Named as one that nobody spoke of before: "some eggs". */
  some: boolean;
  /** Taken, and then put somewhere. */
  setDown: boolean;
  /** What became of the things named before it, where nothing else is said of it: "and the cream too". */
  alsoLost: Deed | null;
  /** "Not the jollof": no part of what was told, unless something is said of it. */
  denied: boolean;
  /** Named again in the sentence, to say something of it alone. */
  retold: boolean;
  /** Only said to be needed: of a thing nobody knows that says nothing. */
  needed: boolean;
}

export const newDraft = (thing: Mention | null, part: Partial<Draft> = {}): Draft => ({
  deed: null,
  or: null,
  definite: false,
  fresh: false,
  parts: [],
  dates: {},
  contains: [],
  freeFrom: [],
  ingredients: [],
  diets: [],
  cautions: [],
  notes: [],
  unmarked: false,
  fine: false,
  kept: false,
  open: false,
  corrects: false,
  needed: false,
  retold: false,
  setDown: false,
  some: false,
  newest: false,
  alsoLost: null,
  denied: false,
  ...part,
  thing,
});

/** True when something was said of it besides its name. */
export const saysSomething = (draft: Draft): boolean =>
  draft.deed !== null ||
  draft.amount !== undefined ||
  draft.share !== undefined ||
  draft.place !== undefined ||
  draft.from !== undefined ||
  draft.parts.length > 0 ||
  Object.keys(draft.dates).length > 0 ||
  draft.maker !== undefined ||
  draft.owner !== undefined ||
  draft.marker !== undefined ||
  draft.unmarked ||
  draft.container !== undefined ||
  draft.left !== undefined ||
  draft.name !== undefined ||
  draft.total !== undefined ||
  [draft.contains, draft.freeFrom, draft.ingredients, draft.diets, draft.cautions, draft.notes].some(
    (list) => list.length > 0,
  );

/** What was told without a verb: where something is, or that something is so. */
const deedOf = (draft: Draft): Deed => {
  const { deed, place, parts, thing, amount, left, fresh, newest, total } = draft;
  // "Put down six portions of stew, bottom shelf, made last night": what is to be bought has no place and no past.
  const isHere = place !== undefined || parts.length > 0;
  if (deed === 'listed' && isHere && (draft.dates.made ?? draft.maker ?? draft.contains[0]) !== undefined)
    return 'stored';
  if (deed) return deed;
  if (left || newest || total) return 'fact';
  // "And another two of the same, on the second shelf".
  if (fresh && amount !== undefined && place !== undefined) return 'stored';
  return thing?.words && (place !== undefined || parts.length > 0 || amount !== undefined)
    ? 'stored'
    : 'fact';
};

/** "Two tubs in the fridge, the other five in the freezer": the first is a part, too. */
const wholeParts = ({ parts, amount, place }: Draft): readonly SaidPart[] =>
  parts.length > 0 && amount && place && !parts.some(({ share }) => typeof share === 'number')
    ? [{ amount, share: null, place }, ...parts]
    : parts;

/** Deeds of which it is kept who did them: who made or brought it is its maker. */
const byHand: ReadonlySet<Deed> = new Set<Deed>([
  ...(['took', 'finished', 'threw', 'gave', 'opened', 'froze', 'moved', 'reheated'] as const),
]);

const some = <T>(list: readonly T[]): readonly T[] | undefined => (list.length > 0 ? list : undefined);

export const statementOf = (draft: Draft): Statement => {
  const parts = wholeParts(draft);
  const { amount, place } = draft;
  const dates = Object.keys(draft.dates).length > 0 ? draft.dates : undefined;
  const all = {
    amount: parts.length > draft.parts.length ? undefined : amount,
    share: draft.share,
    place: parts.length > draft.parts.length ? undefined : place,
    moved: draft.moved,
    from: draft.from,
    parts: some(parts),
    dates,
    when: draft.when,
    maker: draft.maker,
    owner: draft.owner,
    marker: draft.marker,
    container: draft.container,
    contains: some(draft.contains),
    freeFrom: some(draft.freeFrom),
    ingredients: some(draft.ingredients),
    diets: some(draft.diets),
    cautions: some(draft.cautions),
    notes: some(draft.notes),
    name: draft.name,
    except: draft.except,
    by: draft.deed !== null && byHand.has(draft.deed) ? draft.by : undefined,
    left: draft.left,
    total: draft.total,
    stands: draft.deed === null && deedOf(draft) === 'stored' && !draft.fresh ? true : undefined,
    unmarked: draft.unmarked ? true : undefined,
    newest: draft.newest ? true : undefined,
  };
  const said = Object.fromEntries(Object.entries(all).filter(([, value]) => value !== undefined));
  const { thing, definite, fresh, corrects } = draft;
  return { deed: deedOf(draft), thing, definite, fresh, corrects, ...said };
};
