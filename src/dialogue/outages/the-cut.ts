/** The power cut that is talked of, from the household's record: any device knows of it. */
import { isInCut, lastPowerCut, leftInCut, storageOf } from '../../kitchen/index.js';
import type { Change, Kitchen, Op, PowerCut } from '../../kitchen/model.js';
import { powerNow } from '../../safety/index.js';
import type { Clock } from '../../terms/dates.js';

interface Where {
  readonly kitchen: Kitchen;
  readonly clock: Clock;
}

/** What it did to the food is talked of so long after it was over or told of last. */
const hoursAfter = 2;

/** The last cut, while it lasts and for a while after. */
export const theCut = ({ kitchen, clock }: Where): PowerCut | null => {
  const cut = lastPowerCut(kitchen);
  if (!cut || cut.backAt === null) return cut;
  const last = Math.max(Date.parse(cut.backAt), Date.parse(cut.toldAt));
  return Date.parse(clock.now) - last > hoursAfter * 3_600_000 ? null : cut;
};

/** As `theCut`, in the middle of a turn. */
export const cutTalkedOf = (work: {
  readonly kitchen: Kitchen;
  readonly around: { readonly clock: Clock };
}): PowerCut | null => theCut({ kitchen: work.kitchen, clock: work.around.clock });

/** Food that is moved out of a place without power takes with it what the cut came to there: it stays lost. */
const leaving = ({ kitchen, clock }: Where, op: Op): Op => {
  if (op.kind !== 'item' || !op.before || !op.after || op.after.gone) return op;
  const { before, after } = op;
  if (before.placeId === after.placeId) return op;
  const lasting = [...kitchen.powerCuts.values()].filter(
    (cut) =>
      cut.backAt === null &&
      isInCut(kitchen, cut, before.placeId) &&
      // From the fridge to its freezer is out of nothing, but to be judged by other hours: what is lost stays so.
      storageOf(kitchen, before.placeId) !== null,
  );
  const came = powerNow(kitchen, before, clock)?.came;
  if (lasting.length === 0 || (came !== 'lost' && came !== 'doubtful')) return op;
  return { ...op, after: lasting.reduce((item, cut) => leftInCut(item, cut, clock.now, came), after) };
};

export const leavingTheCut = (where: Where, changes: readonly Change[]): readonly Change[] =>
  where.kitchen.powerCuts.size === 0
    ? changes
    : changes.map((change) =>
        change.undoes === undefined ? { ...change, ops: change.ops.map((op) => leaving(where, op)) } : change,
      );
