/** Queries built and compiled once for a database, then run with different values. */
import type { Compilable, CompiledQuery, Kysely } from 'kysely';
import type { Database } from './tables.js';

/** Stands in a query where a value comes. */
class Slot {
  constructor(readonly name: string) {}
}

/** A query with its values still open. */
type Build<Values, Row> = (db: Kysely<Database>, values: Values) => Compilable<Row>;

/** Runs the query with these values and answers its rows. */
export type Run<Values, Row> = (db: Kysely<Database>, values: Values) => Promise<Row[]>;

/**
 * Building and compiling a query takes longer than SQLite needs to answer it, and every turn asks
 * the same few. `build` is called once, with stand-ins for the values: it may hand them to the
 * query and nothing else, and may not choose by them.
 */
export const compiledOnce = <Values extends Readonly<Record<string, string | number | null>>, Row>(
  names: readonly (keyof Values & string)[],
  build: Build<Values, Row>,
): Run<Values, Row> => {
  let compiled: CompiledQuery<Row> | null = null;
  return async (db, values) => {
    compiled ??= build(
      db,
      Object.fromEntries(names.map((name) => [name, new Slot(name)])) as unknown as Values,
    ).compile();
    const parameters = compiled.parameters.map((one) => (one instanceof Slot ? values[one.name] : one));
    return (await db.executeQuery<Row>({ ...compiled, parameters })).rows;
  };
};
