/** Typed HTTP calls to a Tellshelf service, for pages, terminals and programs. */
import type {
  ChangeDone,
  Item,
  ItemChange,
  JournalRow,
  Marker,
  Me,
  NewPurchase,
  PairingStarted,
  Person,
  Place,
  Problem,
  Purchase,
  Reminder,
  SideDoors,
  TurnReply,
  TurnRequest,
  UseFirstRow,
} from './types.js';

export type * from './types.js';

/** The service answered, and said no. `problem` is its RFC 9457 body. */
export class ServiceProblem extends Error {
  override readonly name = 'ServiceProblem';
  constructor(readonly problem: Problem) {
    super(problem.detail ?? problem.title);
  }
}

/** The service could not be reached at all. */
export class ServiceUnreachable extends Error {
  override readonly name = 'ServiceUnreachable';
}

export interface ClientOptions {
  /** Where the service is: `http://kitchen.local:8080`. Empty in a page of the service itself. */
  readonly base: string;
  /** A device token. Pages leave it out: their cookie speaks for them. */
  readonly token?: string;
  /** Sent with every change by pages, against forged requests. */
  readonly csrfToken?: () => string | null;
  readonly fetch?: typeof fetch;
}

export interface Client {
  turn(request: TurnRequest): Promise<TurnReply>;
  me(): Promise<Me>;
  places(): Promise<Place[]>;
  items(): Promise<Item[]>;
  markers(): Promise<Marker[]>;
  people(): Promise<Person[]>;
  useFirst(): Promise<UseFirstRow[]>;
  purchases(): Promise<Purchase[]>;
  journal(): Promise<JournalRow[]>;
  reminders(): Promise<Reminder[]>;
  changeItem(id: string, change: ItemChange): Promise<ChangeDone>;
  /** `more`: how much, which section, shop and kind, for whom. */
  addPurchase(name: string, more?: Omit<NewPurchase, 'name'>): Promise<ChangeDone>;
  removePurchase(id: string): Promise<ChangeDone>;
  undo(): Promise<ChangeDone>;
  /** Addresses for a calendar, the list to buy and another speech front. */
  feeds(): Promise<SideDoors>;
  /** Any other call, checked by the caller. `key`: an id of its own, so that sent twice it is done once. */
  call<T>(method: string, path: string, body?: unknown, key?: string): Promise<T>;
}

/** Makes a client. Every method rejects with ServiceProblem or ServiceUnreachable, never silently. */
export const createClient = (options: ClientOptions): Client => {
  const send = options.fetch ?? fetch.bind(globalThis);

  const call = async <T>(method: string, path: string, body?: unknown, key?: string): Promise<T> => {
    const headers: Record<string, string> = {};
    if (key !== undefined) headers['idempotency-key'] = key;
    if (body !== undefined) headers['content-type'] = 'application/json';
    if (options.token !== undefined) headers['authorization'] = `Bearer ${options.token}`;
    const csrf = options.csrfToken?.() ?? null;
    if (csrf !== null && method !== 'GET') headers['x-csrf-token'] = csrf;
    let response: Response;
    try {
      response = await send(`${options.base}${path}`, {
        method,
        headers,
        ...(body === undefined ? {} : { body: JSON.stringify(body) }),
      });
    } catch {
      throw new ServiceUnreachable('The service cannot be reached.');
    }
    const json = response.headers.get('content-type')?.includes('json') === true;
    const got = json ? ((await response.json()) as unknown) : null;
    if (!response.ok)
      throw new ServiceProblem(
        json
          ? (got as Problem)
          : { type: 'about:blank', title: response.statusText, status: response.status, code: 'unknown' },
      );
    return got as T;
  };

  const one = (path: string, id: string): string => `${path}/${encodeURIComponent(id)}`;
  return {
    call,
    turn: (request) => call('POST', '/v1/turns', request),
    me: () => call('GET', '/v1/me'),
    places: () => call('GET', '/v1/kitchen/places'),
    items: () => call('GET', '/v1/kitchen/items'),
    markers: () => call('GET', '/v1/kitchen/markers'),
    people: () => call('GET', '/v1/kitchen/people'),
    useFirst: () => call('GET', '/v1/kitchen/use-first'),
    purchases: () => call('GET', '/v1/kitchen/list'),
    reminders: () => call('GET', '/v1/kitchen/reminders'),
    journal: () => call('GET', '/v1/kitchen/journal'),
    changeItem: (id, change) => call('PATCH', one('/v1/kitchen/items', id), change),
    addPurchase: (name, more = {}) => call('POST', '/v1/kitchen/list', { ...more, name }),
    removePurchase: (id) => call('DELETE', one('/v1/kitchen/list', id)),
    undo: () => call('POST', '/v1/kitchen/undo'),
    feeds: () => call('GET', '/v1/feeds'),
  };
};

export interface PairOptions extends Pick<ClientOptions, 'base' | 'fetch'> {
  /** What this device is to be called: "speaker by the door". */
  readonly name: string;
  /** Called once with the code, for a screen and as it is said: an owner has ten minutes to let it in. */
  readonly onCode: (code: string, spoken: string) => void;
  /** Milliseconds between asking whether it was let in. */
  readonly every?: number;
}

/**
 * Asks to be let in and waits for it. Resolves with the device's token, to be kept secret. Rejects with
 * ServiceProblem `not-identified` when nobody did before the code went out of date, and with ServiceUnreachable.
 */
export const pair = async ({ name, onCode, every = 2_000, ...options }: PairOptions): Promise<string> => {
  const asked = await createClient(options).call<PairingStarted>('POST', '/v1/pairings', { name });
  const client = createClient({ ...options, token: asked.token });
  onCode(asked.code, asked.spoken);
  for (;;) {
    await new Promise((resolve) => setTimeout(resolve, every));
    try {
      await client.me();
      return asked.token;
    } catch (error) {
      const waits = error instanceof ServiceProblem && error.problem.code === 'not-identified';
      if (!waits || Date.now() > Date.parse(asked.expiresAt)) throw error;
    }
  }
};
