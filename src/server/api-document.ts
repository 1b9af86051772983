/**
 * Finishes the descriptions that other programs are made from: names for operations, each error by its status
 * with an example, and schemas that refer to nothing outside the document.
 */
import { errorsOf } from './api-errors.js';
import { EXAMPLES, readAnswers, type Answers } from './api-examples.js';
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

/** What the service sends may gain parts within `/v1`, so no schema of it shuts out what it does not name. */
const mayGain = (schema: unknown): unknown => {
  if (Array.isArray(schema)) return schema.map(mayGain);
  if (!isTree(schema)) return schema;
  return Object.fromEntries(
    Object.entries(schema)
      .filter(([key, value]) => !(key === 'additionalProperties' && value === false))
      .map(([key, value]) => [key, mayGain(value)]),
  );
};

/**
 * A JSON Schema with parts of its own (`$defs`), as entries for `components.schemas`: its parts beside it, each
 * under its name. `suffix` tells a message's parts as received from the same as sent, which has none.
 */
export const asComponents = (name: string, schema: unknown, suffix: 'Input' | ''): Tree => {
  const { $defs, $schema: _dialect, ...own } = (suffix === '' ? mayGain(schema) : schema) as Tree;
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
    .flatMap((part) => part.split(/[-.]/))
    .map((word) => word.charAt(0).toUpperCase() + word.slice(1))
    .join('');

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
          ...(mayGain(response) as Tree),
          description: status === '200' ? `${summary}.` : (SAID[status] ?? `${summary}.`),
        },
      ]),
  );

const isText = (schema: unknown): boolean => (schema as Tree)['type'] === 'string';

/** Text that is no JSON, by the types a route names; what they are is no part of JSON Schema. */
const textsOf = (operation: Tree): Tree => {
  const types = (operation['x-produces'] ?? []) as readonly string[];
  return Object.fromEntries(types.map((type) => [type, { schema: { type: 'string' } }]));
};

/** A body or an answer with an example of each type that there is one of. */
const withExamples = (whole: unknown, examples: Tree): Tree => {
  const { content, ...rest } = whole as Tree;
  if (!isTree(content)) return rest;
  const shown = Object.entries(content).map(([type, of]) => [
    type,
    type in examples ? { ...(of as Tree), example: examples[type] } : of,
  ]);
  return { ...rest, content: Object.fromEntries(shown) as Tree };
};

const finishOperation = (method: string, path: string, operation: Tree, recorded: Answers): Tree => {
  const responses = (operation['responses'] ?? {}) as Tree;
  const needs = operation['x-needs'] as string | undefined;
  const body = operation['requestBody'] !== undefined;
  const input = Array.isArray(operation['parameters']);
  const right =
    needs === undefined || needs === 'public'
      ? 'Right: none; anybody may call it.'
      : `Right: a device that may ${needs}.`;
  const description = [operation['description'], right].filter(Boolean).join('\n\n');
  const at = `${method.toUpperCase()} ${path}`;
  const example = EXAMPLES[at];
  const { 'x-produces': _types, ...rest } = operation;
  const answers = answersOf(responses, String(operation['summary'] ?? 'Done'));
  const texts = textsOf(operation);
  if (Object.keys(texts).length > 0) {
    const known = (answers['200'] ?? { description: `${String(operation['summary'])}.` }) as Tree;
    // The library gives a route's schema to each type it names, which for text is text.
    const [said] = Object.values((known['content'] ?? {}) as Record<string, Tree>);
    const json = said?.['schema'] && !isText(said['schema']) ? { 'application/json': said } : {};
    answers['200'] = { ...known, content: { ...json, ...texts } };
  }
  for (const [status, answer] of Object.entries(answers))
    answers[status] = withExamples(answer, recorded[at] ?? {});
  return {
    ...rest,
    operationId: operationId(method, path),
    description,
    ...(example === undefined
      ? {}
      : { requestBody: withExamples(operation['requestBody'], { 'application/json': example }) }),
    responses: {
      ...answers,
      ...errorResponses(errorsOf({ method, path, body, input, needs })),
    },
  };
};

/** The document as the routes gave it, finished. `messages` are the socket's two kinds. */
export const finishDocument = (document: ApiDocument, messages: Tree): ApiDocument => {
  const recorded = readAnswers();
  const paths = Object.fromEntries(
    Object.entries(document.paths ?? {}).map(([path, operations]) => [
      path,
      Object.fromEntries(
        Object.entries(operations).map(([method, operation]) => [
          method,
          finishOperation(method, path, operation as unknown as Tree, recorded),
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
  const ofRoutes = Object.entries(document.components?.schemas ?? {}).map(([name, schema]) => [
    name,
    name.endsWith('Input') ? schema : mayGain(schema),
  ]);
  const schemas = { ...(Object.fromEntries(ofRoutes) as Tree), ...messages };
  return {
    ...document,
    paths: paths as unknown as NonNullable<ApiDocument['paths']>,
    components: { ...document.components, schemas: usedSchemas(schemas, [paths]) },
  };
};
