/**
 * Finishes the descriptions that other programs are made from: names for operations, each error by its status
 * with an example, and schemas that refer to nothing outside the document.
 */
import { EXAMPLES } from './api-examples.js';
import { PROBLEMS, toProblem, type ProblemCode } from './problems.js';
import type { ApiDocument } from './reference-page.js';

type Json = null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json };
type Tree = Record<string, unknown>;

const isTree = (value: unknown): value is Tree =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** A copy with every `$ref` named anew. */
const withRefs = (value: unknown, rename: (ref: string) => string): unknown => {
  if (Array.isArray(value)) return value.map((one) => withRefs(one, rename));
  if (!isTree(value)) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, part]) => [
      key,
      key === '$ref' && typeof part === 'string' ? rename(part) : withRefs(part, rename),
    ]),
  );
};

/**
 * A JSON Schema with parts of its own (`$defs`), as entries for `components.schemas`: its parts beside it, each
 * under its name. `suffix` tells a message's parts as sent from the same as received.
 */
export const asComponents = (name: string, schema: unknown, suffix: string): Tree => {
  const { $defs, $schema: _dialect, ...own } = schema as Tree;
  const rename = (ref: string): string =>
    ref.replace(/^#\/\$defs\/(.+)$/, `#/components/schemas/$1${suffix}`);
  const part = (body: unknown): unknown => {
    const { id: _id, $id: _own, ...rest } = body as Tree;
    return withRefs(rest, rename);
  };
  return Object.fromEntries([
    ...Object.entries((isTree($defs) ? $defs : {}) as Tree).map(([key, body]) => [
      `${key}${suffix}`,
      part(body),
    ]),
    [name, withRefs(own, rename)],
  ]);
};

const refsIn = (value: unknown, into: Set<string>): void => {
  if (Array.isArray(value)) for (const one of value) refsIn(one, into);
  if (!isTree(value)) return;
  for (const [key, part] of Object.entries(value))
    if (key === '$ref' && typeof part === 'string') into.add(part.replace('#/components/schemas/', ''));
    else refsIn(part, into);
};

/** Only the schemas that something leads to. */
export const usedSchemas = (schemas: Tree, roots: readonly unknown[]): Tree => {
  const used = new Set<string>();
  for (const root of roots) refsIn(root, used);
  // A set grows while it is gone through.
  for (const name of used) refsIn(schemas[name], used);
  return Object.fromEntries(Object.entries(schemas).filter(([name]) => used.has(name)));
};

/** `POST /v1/kitchen/items/{id}/finish` is `postKitchenItemsByIdFinish`. */
const operationId = (method: string, path: string): string =>
  method +
  path
    .split('/')
    .filter((part) => part !== '' && part !== 'v1')
    .map((part) => part.replace(/^\{(.+)\}$/, 'by-$1'))
    .flatMap((part) => part.split('-'))
    .map((word) => word.charAt(0).toUpperCase() + word.slice(1))
    .join('');

interface Shape {
  readonly method: string;
  readonly path: string;
  readonly body: boolean;
  readonly input: boolean;
  readonly needs: string | undefined;
}

/** The errors a route of this shape may answer with. */
const errorsOf = ({ method, path, body, input, needs }: Shape): readonly ProblemCode[] => {
  if (path.startsWith('/health')) return [];
  const closed = needs !== undefined && needs !== 'public';
  const changes = method !== 'get';
  const when = (holds: boolean, ...codes: ProblemCode[]): readonly ProblemCode[] => (holds ? codes : []);
  return [
    ...when(body, 'malformed-json', 'too-large', 'wrong-media-type'),
    ...when(body || input, 'invalid-request'),
    ...when(closed, 'not-identified', 'not-allowed'),
    ...when(path.startsWith('/v1/feeds/'), 'not-identified'),
    ...when(path.startsWith('/v1/hooks/'), 'not-signed', 'id-reused', 'too-many-waiting', 'too-busy'),
    ...when(closed && changes, 'csrf-token-missing'),
    ...when(path.includes('{'), 'not-found'),
    ...when(path.endsWith('/confirm'), 'code-not-valid'),
    ...when(path.endsWith('/accept'), 'invitation-not-valid'),
    ...when(path === '/v1/conversation', 'wrong-origin', 'too-many-sockets'),
    ...when(path.startsWith('/v1/kitchen') && changes, 'refused', 'too-busy', 'id-reused'),
    ...when(path.startsWith('/v1/kitchen') && method === 'patch', 'changed-meanwhile'),
    ...when(path === '/v1/turns', 'id-reused', 'too-many-waiting'),
    'too-many-requests',
    ...when(changes, 'storage-full'),
    'overloaded',
    'closing',
    'internal',
  ];
};

const PROBLEM = { $ref: '#/components/schemas/Problem' };

/** One response a status, with what it says for each code. */
const errorResponses = (codes: readonly ProblemCode[]): Tree => {
  const statuses = [...new Set(codes.map((code) => PROBLEMS[code].status))].sort((a, b) => a - b);
  return Object.fromEntries(
    statuses.map((status) => {
      const here = codes.filter((code) => PROBLEMS[code].status === status);
      return [
        String(status),
        {
          description: here.map((code) => PROBLEMS[code].title).join(' Or: '),
          content: {
            'application/problem+json': {
              schema: PROBLEM,
              examples: Object.fromEntries(
                here.map((code) => [code, { value: toProblem(code, {}, 'r1-1') as unknown as Json }]),
              ),
            },
          },
        },
      ];
    }),
  );
};

const SAID = { 200: 'Done.', 201: 'Made.', 204: 'Done; there is nothing to say.' } as Readonly<
  Record<string, string>
>;

/** Answers that are not errors, each with words in place of the library's own. */
const answersOf = (responses: Tree, summary: string): Tree =>
  Object.fromEntries(
    Object.entries(responses)
      .filter(([status]) => !/^[45]/.test(status))
      .map(([status, response]) => [
        status,
        {
          ...(response as Tree),
          description: status === '200' ? `${summary}.` : (SAID[status] ?? `${summary}.`),
        },
      ]),
  );

/** Text that is no JSON, by the types a route names; what they are is no part of JSON Schema. */
const textsOf = (operation: Tree): Tree | null => {
  const types = operation['x-produces'] as readonly string[] | undefined;
  return types === undefined
    ? null
    : Object.fromEntries(types.map((type) => [type, { schema: { type: 'string' } }]));
};

const withExample = (requestBody: unknown, example: unknown): Tree => {
  const { content, ...body } = requestBody as Tree;
  const [[type, of] = ['application/json', {}]] = Object.entries(content as Tree);
  return { ...body, content: { [type]: { ...(of as Tree), example } } };
};

const finishOperation = (method: string, path: string, operation: Tree): Tree => {
  const responses = (operation['responses'] ?? {}) as Tree;
  const needs = operation['x-needs'] as string | undefined;
  const body = operation['requestBody'] !== undefined;
  const input = Array.isArray(operation['parameters']);
  const right =
    needs === undefined || needs === 'public'
      ? 'Right: none; anybody may call it.'
      : `Right: a device that may ${needs}.`;
  const description = [operation['description'], right].filter(Boolean).join('\n\n');
  const ready = path === '/health/ready' ? { '503': responses['5XX'] } : {};
  const example = EXAMPLES[`${method.toUpperCase()} ${path}`];
  const { 'x-produces': _types, ...rest } = operation;
  const answers = answersOf(responses, String(operation['summary'] ?? 'Done'));
  const texts = textsOf(operation);
  if (texts !== null) {
    const known = (answers['200'] ?? { description: `${String(operation['summary'])}.` }) as Tree;
    answers['200'] = { ...known, content: { ...texts, ...(known['content'] as Tree | undefined) } };
  }
  return {
    ...rest,
    operationId: operationId(method, path),
    description,
    ...(example === undefined ? {} : { requestBody: withExample(operation['requestBody'], example) }),
    responses: {
      ...answers,
      ...ready,
      ...errorResponses(errorsOf({ method, path, body, input, needs })),
    },
  };
};

/** The document as the routes gave it, finished. `messages` are the socket's two kinds. */
export const finishDocument = (document: ApiDocument, messages: Tree): ApiDocument => {
  const paths = Object.fromEntries(
    Object.entries(document.paths ?? {}).map(([path, operations]) => [
      path,
      Object.fromEntries(
        Object.entries(operations).map(([method, operation]) => [
          method,
          finishOperation(method, path, operation as unknown as Tree),
        ]),
      ),
    ]),
  );
  const socket = (paths['/v1/conversation'] as Tree | undefined)?.['get'] as Tree | undefined;
  if (socket)
    socket['responses'] = {
      '101': {
        description: 'The socket is open. Frames are one message each; /v1/asyncapi.json describes them.',
        content: {
          'application/json': {
            schema: {
              oneOf: [
                { $ref: '#/components/schemas/ClientMessage' },
                { $ref: '#/components/schemas/ServerMessage' },
              ],
            },
          },
        },
      },
      ...(socket['responses'] as Tree),
    };
  const schemas = { ...document.components?.schemas, ...messages };
  return {
    ...document,
    paths: paths as unknown as NonNullable<ApiDocument['paths']>,
    components: { ...document.components, schemas: usedSchemas(schemas, [paths]) },
  };
};
