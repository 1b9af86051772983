/** What guidance names of one food for people at risk. */
import type { Item, Person } from '../../kitchen/model.js';
import type { Caution } from '../../safety/api.js';
import { assessFor } from '../../safety/index.js';
import type { Turn } from '../handler.js';

/** What guidance names for people at risk holds for a baby only where it is of babies, and for nobody else then. */
const forBabies = 'at-risk-honey';
const isOf = ({ code }: Caution, risks: readonly string[]): boolean => {
  const baby = risks.includes('infant');
  const others = risks.length === 0 || risks.some((risk) => risk !== 'infant');
  return code.startsWith('at-risk') && code !== 'at-risk-general' && (code === forBabies ? baby : others);
};

/** What guidance says of one food to somebody at risk as she is. */
export const riskCautions = (turn: Turn, person: Person, item: Item): readonly Caution[] => {
  if (!person.atRisk) return [];
  const found = assessFor(turn.kitchen, item, turn.clock, person);
  return found.cautions.filter((caution) => isOf(caution, person.risks ?? []));
};
