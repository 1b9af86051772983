import { personNamed } from '../../kitchen/index.js';
import type { Turn } from '../handler.js';

/** As the household writes it: "amara" is Amara. */
export const makerName = (turn: Turn, said: string): string => personNamed(turn.kitchen, said)?.name ?? said;
