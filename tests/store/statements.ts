/**
 * Every statement a store sends to PostgreSQL, and whether it names one household: what households spread over nodes
 * by their id stand on. What names none is on a short list, each with its reason.
 */
import pg from 'pg';

export interface Sent {
  readonly text: string;
  readonly values: readonly unknown[];
  /** Whose rows the transaction may see: a household, or `null` for those asked across all. */
  readonly household: string | null;
}

interface Exception {
  readonly what: RegExp;
  readonly why: string;
}

/** Asked across households. Each is one statement that reads or writes a few rows, by an index. */
export const ACROSS: readonly Exception[] = [
  {
    what: /^select "household_id" from "household" order by/,
    why: 'for the command line: which households are there',
  },
  {
    what: /^select "household_id" from "household" where "?planned"? /,
    why: 'what is to be planned, by an index on what is not planned',
  },
  {
    what: /^select "household_id" from "household" where \("planned" != /,
    why: 'the same, after the carriers changed, a page at a time',
  },
  {
    what: /^select distinct "household_id" from "reminder" /,
    why: 'whose timers came due, by an index on time',
  },
  {
    what: /^select "household_id", "id" from "telling" where/,
    why: 'what is due to be sent, without locks, by an index on time; each row is then leased by its household',
  },
  {
    what: /^select \* from "device_token" where "token_hash" = \$1$/,
    why: 'whose token it is, before the household is known: spread by the hash',
  },
  {
    what: /^(select|insert into|delete from) .*"pairing"/,
    why: 'a device that waits has no household yet: spread by its code',
  },
  { what: /^select pg_current_xact_id\(\)$/, why: 'whether the database keeps what is written' },
];

/** Within a household's transaction, and yet elsewhere. */
export const BESIDE: readonly Exception[] = [
  {
    what: /^(insert into|delete from|update) "device_token"/,
    why: 'a device let in or gone is also kept by its token’s hash, in the same transaction',
  },
];

const CONTROL =
  /^(begin|commit|rollback|set |show |listen |unlisten |notify |select pg_notify|select 1$|select set_config)/i;

/** What is set at the begin of a transaction says whose it is. */
const householdIn = (text: string): string | null | undefined => {
  const only = /set local tellshelf\.household = '([^']+)'/.exec(text);
  if (only) return only[1]!;
  return text.includes('tellshelf.everyone') ? null : undefined;
};

/** Hears every statement of this process from now on. */
export const recordStatements = (): { readonly sent: readonly Sent[]; readonly stop: () => void } => {
  const sent: Sent[] = [];
  const scopes = new WeakMap<object, string | null>();
  const real = pg.Client.prototype.query as (this: pg.Client, ...args: unknown[]) => unknown;
  const spy = function (this: pg.Client, ...args: unknown[]): unknown {
    const [first, second] = args;
    const asked =
      typeof first === 'string'
        ? { text: first, values: second }
        : (first as { text?: string; values?: unknown });
    const text = asked?.text?.trim() ?? '';
    const begun = /^begin/i.test(text) ? householdIn(text) : undefined;
    if (begun !== undefined) scopes.set(this, begun);
    else if (/^(commit|rollback)/i.test(text)) scopes.delete(this);
    else if (scopes.has(this) && !CONTROL.test(text))
      sent.push({
        text,
        values: Array.isArray(asked.values) ? (asked.values as unknown[]) : [],
        household: scopes.get(this)!,
      });
    return real.apply(this, args);
  };
  pg.Client.prototype.query = spy as typeof pg.Client.prototype.query;
  return { sent, stop: () => void (pg.Client.prototype.query = real as typeof pg.Client.prototype.query) };
};

const isParameter = (text: string): number | null => {
  const found = /^\$(\d+)$/.exec(text.trim());
  return found ? Number(found[1]) : null;
};

/** The columns and rows of an insert; null for anything else. */
const inserted = (text: string): { columns: string[]; rows: string[][] } | null => {
  const found = /^insert into "\w+" \(([^)]*)\) values (.*)$/s.exec(text);
  if (!found) return null;
  const columns = found[1]!.split(',').map((column) => column.trim().replaceAll('"', ''));
  const [values] = found[2]!.split(/ on conflict | returning /);
  const rows = [...values!.matchAll(/\(([^()]*)\)/g)].map(([, row]) => row!.split(','));
  return { columns, rows };
};

/** Why a statement does not name its household and no other; null where it does. */
export const whyNotOne = ({ text, values, household }: Sent): string | null => {
  if (household === null)
    return ACROSS.some(({ what }) => what.test(text)) ? null : 'asked across households, and not on the list';
  if (BESIDE.some(({ what }) => what.test(text))) return null;
  const insert = inserted(text);
  if (insert) {
    const at = insert.columns.indexOf('household_id');
    if (at < 0) return 'inserts no household';
    const others = insert.rows.filter((row) => {
      const parameter = isParameter(row[at] ?? '');
      return parameter === null || values[parameter - 1] !== household;
    });
    return others.length === 0 && insert.rows.length > 0 ? null : 'inserts rows of another household';
  }
  const named = [...text.matchAll(/(?:"(\w+)"\.)?"household_id" = \$(\d+)/g)];
  if (!named.some(([, , parameter]) => values[Number(parameter) - 1] === household))
    return 'names no household';
  if (named.some(([, , parameter]) => values[Number(parameter) - 1] !== household))
    return 'names another household';
  for (const [, table] of text.matchAll(/ join "(\w+)"/g))
    if (
      !new RegExp(
        `"${table}"\\."household_id" = "\\w+"\\."household_id"|"\\w+"\\."household_id" = "${table}"\\."household_id"`,
      ).test(text)
    )
      return `joins ${table} by something else than the household`;
  return null;
};
