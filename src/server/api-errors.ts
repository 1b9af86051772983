/** Which errors each operation may answer with, for its description. Tests of the service compare what it answers. */
import type { ProblemCode } from './problems.js';

/** What an operation has beside what follows from its shape. */
const OWN: Readonly<Record<string, readonly ProblemCode[]>> = {
  'POST /v1/turns': ['id-reused', 'too-many-waiting', 'too-busy'],
  'GET /v1/conversation': ['wrong-origin', 'too-many-sockets'],
  'POST /v1/hooks/{household}/{device}/turns': ['not-signed', 'id-reused', 'too-many-waiting', 'too-busy'],
  'POST /v1/session': ['not-identified'],
  'POST /v1/pairings/confirm': ['code-not-valid', 'not-found'],
  'POST /v1/invitations': ['not-found'],
  'POST /v1/invitations/accept': ['invitation-not-valid'],
  'PUT /v1/notices': ['refused'],
  'PATCH /v1/devices/{id}': ['refused', 'too-busy'],
  'DELETE /v1/devices/{id}': ['refused', 'too-busy'],
  'GET /v1/kitchen/items': ['not-found'],
  'PATCH /v1/kitchen/items/{id}': ['changed-meanwhile'],
  'PATCH /v1/household': ['refused', 'id-reused', 'too-busy'],
  'DELETE /v1/household': ['refused', 'not-found'],
  'GET /v1/household/export': ['not-found'],
  'POST /v1/household/import': ['refused', 'id-reused', 'too-busy'],
  'POST /v1/labels': ['refused', 'not-found'],
  'GET /v1/lessons/report': ['refused'],
};

export interface Shape {
  readonly method: string;
  readonly path: string;
  readonly body: boolean;
  readonly input: boolean;
  readonly needs: string | undefined;
}

export const errorsOf = ({ method, path, body, input, needs }: Shape): readonly ProblemCode[] => {
  if (path === '/health/ready') return ['overloaded', 'closing'];
  if (path.startsWith('/health')) return [];
  const closed = needs !== undefined && needs !== 'public';
  const changes = method !== 'get';
  const ofKitchen = path.startsWith('/v1/kitchen') && changes;
  const when = (holds: boolean, ...codes: ProblemCode[]): readonly ProblemCode[] => (holds ? codes : []);
  const all = [
    ...when(body, 'malformed-json', 'too-large', 'wrong-media-type'),
    ...when(body || input, 'invalid-request'),
    ...when(closed, 'not-identified', 'not-allowed'),
    ...when(path.startsWith('/v1/feeds/'), 'not-identified'),
    ...when(closed && changes, 'csrf-token-missing'),
    ...when(path.includes('{'), 'not-found'),
    ...when(ofKitchen, 'not-found', 'refused', 'too-busy', 'id-reused'),
    ...(OWN[`${method.toUpperCase()} ${path}`] ?? []),
    'too-many-requests' as const,
    ...when(changes, 'storage-full', 'not-known'),
    'overloaded' as const,
    'closing' as const,
    'internal' as const,
  ];
  return [...new Set(all)];
};
