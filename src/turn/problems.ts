/** What can stop a turn. Transports turn these into their own errors. */
export type TurnProblemCode =
  /** No household with this id in the store. */
  | 'no-such-household'
  /** The id was used before for a turn that said something else. */
  | 'turn-id-reused'
  /** More turns are waiting for this household than is sensible. */
  | 'too-many-waiting'
  /** What the speaker may do changed since it was looked up: look again. Nothing was done. */
  | 'rights-changed'
  /** Others kept changing the kitchen faster than this turn could be decided. */
  | 'too-busy';

export class TurnProblem extends Error {
  constructor(
    readonly code: TurnProblemCode,
    message: string,
  ) {
    super(message);
    this.name = 'TurnProblem';
  }
}
