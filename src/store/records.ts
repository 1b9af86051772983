/** Which table holds which kind of record, and the columns that are kept beside its body. */
import type { RecordKind, Records } from '../kitchen/model.js';
import type { Database } from './tables.js';

export type MappedKind = Exclude<RecordKind, 'household'>;

/** Without NUL and half surrogates, which PostgreSQL cannot hold in a text column. The body keeps them, escaped. */
export const columnText = (text: string): string =>
  text
    .replaceAll('\0', '')
    .replace(/[\uD800-\uDBFF](?![\uDC00-\uDFFF])|(?<![\uD800-\uDBFF])[\uDC00-\uDFFF]/g, '\uFFFD');

export const RECORD_TABLES = {
  person: 'person',
  place: 'place',
  marker: 'marker',
  item: 'item',
  purchase: 'purchase',
  note: 'note',
  reminder: 'reminder',
  stockTake: 'stock_take',
  powerCut: 'power_cut',
} as const satisfies Record<MappedKind, keyof Database>;

type Columns = Readonly<Record<string, string | null>>;

const COLUMNS: { readonly [K in MappedKind]: (record: Records[K]) => Columns } = {
  person: ({ name }) => ({ name: columnText(name) }),
  place: ({ name, parentId, kind }) => ({ name: columnText(name), parent_id: parentId, kind }),
  marker: ({ lastItemId }) => ({ last_item_id: lastItemId }),
  item: ({ name, placeId, markerId, batchId, addedAt, gone }) => ({
    name: columnText(name),
    place_id: placeId,
    marker_id: markerId,
    batch_id: batchId,
    added_at: addedAt,
    gone_at: gone?.at ?? null,
  }),
  purchase: ({ name }) => ({ name: columnText(name) }),
  note: ({ forPersonId, at }) => ({ for_person_id: forPersonId, at }),
  reminder: ({ due, deliveredAt }) => ({ due, delivered_at: deliveredAt }),
  stockTake: ({ placeId, finishedAt }) => ({ place_id: placeId, finished_at: finishedAt }),
  powerCut: ({ since, backAt }) => ({ since, back_at: backAt }),
};

/** A record as a row of its table, without the household's id. */
export const rowOf = <K extends MappedKind>(
  kind: K,
  record: Records[K],
): Columns & { id: string; body: string } => ({
  ...COLUMNS[kind](record),
  id: record.id,
  body: JSON.stringify(record),
});
