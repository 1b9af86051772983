/**
 * The API reference as one plain page: headings, lists and tables, no script, so that it reads
 * as well by ear as by eye.
 */
import { htmlText } from './html.js';

interface Schema {
  readonly $ref?: string;
  readonly type?: string | readonly string[];
  readonly description?: string;
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly required?: readonly string[];
  readonly items?: Schema;
  readonly anyOf?: readonly Schema[];
  readonly oneOf?: readonly Schema[];
  readonly enum?: readonly unknown[];
  readonly const?: unknown;
  readonly [more: string]: unknown;
}
interface Body {
  readonly content?: Readonly<Record<string, { readonly schema?: Schema }>>;
  readonly description?: string;
}
interface Operation {
  readonly summary?: string;
  readonly description?: string;
  readonly tags?: readonly string[];
  readonly parameters?: readonly {
    name: string;
    in: string;
    required?: boolean;
    description?: string;
    schema?: Schema;
  }[];
  readonly requestBody?: Body;
  readonly responses?: Readonly<Record<string, Body>>;
  readonly 'x-needs'?: string;
}
/** As much of an OpenAPI 3.1 document as the page reads. */
export interface ApiDocument {
  readonly info: { readonly title: string; readonly description?: string };
  readonly tags?: readonly { readonly name: string; readonly description?: string }[];
  readonly paths?: Readonly<Record<string, Readonly<Record<string, Operation>>>>;
  readonly components?: { readonly schemas?: Readonly<Record<string, unknown>> };
}

/** Back-quoted parts of our own descriptions as code. */
const prose = (raw: string): string => htmlText(raw).replace(/`([^`]+)`/g, '<code>$1</code>');

const typeOf = (schema: Schema | undefined): string => {
  if (!schema) return 'anything';
  if (schema.$ref) {
    const name = schema.$ref.split('/').at(-1) ?? '';
    return `<a href="#schema-${htmlText(name)}">${htmlText(name)}</a>`;
  }
  if (schema.const !== undefined) return `<code>${htmlText(JSON.stringify(schema.const))}</code>`;
  if (schema.enum)
    return schema.enum.map((value) => `<code>${htmlText(JSON.stringify(value))}</code>`).join(' or ');
  const either = schema.anyOf ?? schema.oneOf;
  if (either) return either.map(typeOf).join(' or ');
  if (schema.type === 'array') return `list of ${typeOf(schema.items)}`;
  if (schema.type === undefined) return 'anything';
  return typeof schema.type === 'string' ? htmlText(schema.type) : schema.type.map(htmlText).join(' or ');
};

const fields = (schema: Schema | undefined, caption: string): string => {
  if (!schema) return '';
  const variants = schema.oneOf ?? schema.anyOf;
  if (variants && !schema.properties) {
    return variants.map((variant, n) => fields(variant, `${caption}, form ${n + 1}`)).join('');
  }
  if (!schema.properties) return `<p>${caption}: ${typeOf(schema)}.</p>`;
  const rows = Object.entries(schema.properties).map(
    ([name, part]) =>
      `<tr><th scope="row"><code>${htmlText(name)}</code></th><td>${typeOf(part)}</td><td>${
        schema.required?.includes(name) ? 'yes' : 'no'
      }</td><td>${prose(part.description ?? '')}</td></tr>`,
  );
  return `<table><caption>${caption}</caption><thead><tr><th scope="col">Part</th><th scope="col">Type</th><th scope="col">Needed</th><th scope="col">Meaning</th></tr></thead><tbody>${rows.join('')}</tbody></table>`;
};

const jsonOf = (body: Body | undefined): Schema | undefined => Object.values(body?.content ?? {})[0]?.schema;

const operation = (path: string, method: string, one: Operation): string => {
  const parameters: Schema = {
    properties: Object.fromEntries(
      (one.parameters ?? []).map((parameter) => [
        parameter.name,
        {
          ...parameter.schema,
          ...(parameter.description === undefined ? {} : { description: parameter.description }),
        },
      ]),
    ),
    required: (one.parameters ?? []).flatMap((parameter) => (parameter.required ? parameter.name : [])),
  };
  const needs = one['x-needs'];
  return `<section><h3><code>${method.toUpperCase()} ${htmlText(path)}</code></h3>
<p><strong>${prose(one.summary ?? '')}.</strong> ${prose(one.description ?? '')} ${
    needs === undefined ? 'No key is needed.' : `Needs a device that may <em>${htmlText(needs)}</em>.`
  }</p>
${one.parameters?.length ? fields(parameters, 'In the address') : ''}
${one.requestBody ? fields(jsonOf(one.requestBody), 'Body') : ''}
${Object.entries(one.responses ?? {})
  .filter(([status]) => status.startsWith('2'))
  .map(([status, body]) =>
    jsonOf(body) ? fields(jsonOf(body), `Answer ${status}`) : `<p>Answer ${htmlText(status)}.</p>`,
  )
  .join('')}</section>`;
};

/** The whole page. Everything that came from outside this file is escaped. */
export const referencePage = (
  document: ApiDocument,
  problems: Readonly<Record<string, { status: number; title: string }>>,
): string => {
  const operations = Object.entries(document.paths ?? {}).flatMap(([path, methods]) =>
    Object.entries(methods).map(([method, one]) => ({ path, method, one })),
  );
  const groups = (document.tags ?? []).map(({ name, description }) => {
    const inGroup = operations.filter(({ one }) => one.tags?.includes(name));
    return `<section id="${htmlText(name)}"><h2>${htmlText(description ?? name)}</h2>${inGroup
      .map(({ path, method, one }) => operation(path, method, one))
      .join('')}</section>`;
  });
  const schemas = Object.entries(document.components?.schemas ?? {})
    .map(
      ([name, schema]) =>
        `<section id="schema-${htmlText(name)}"><h3>${htmlText(name)}</h3>${fields(schema as Schema, htmlText(name))}</section>`,
    )
    .join('');
  const codes = Object.entries(problems)
    .map(
      ([code, { status, title }]) =>
        `<tr id="${htmlText(code)}"><th scope="row"><code>${htmlText(code)}</code></th><td>${status}</td><td>${htmlText(title)}</td></tr>`,
    )
    .join('');
  return `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><meta name="color-scheme" content="light dark">
<link rel="stylesheet" href="/style.css"><title>${htmlText(document.info.title)}: API reference</title></head>
<body class="reference"><a class="skip" href="#main">Skip to the reference</a><header><h1>${htmlText(document.info.title)}: API reference</h1>
${(document.info.description ?? '')
  .split('\n\n')
  .map((paragraph) => `<p>${prose(paragraph)}</p>`)
  .join('')}
<nav aria-label="Parts"><ul>${(document.tags ?? [])
    .map(
      ({ name, description }) => `<li><a href="#${htmlText(name)}">${htmlText(description ?? name)}</a></li>`,
    )
    .join(
      '',
    )}<li><a href="#schemas">Schemas</a></li><li><a href="#problems">Problems</a></li></ul></nav></header>
<main id="main">${groups.join('')}<section id="schemas"><h2>Schemas</h2>${schemas}</section>
<section id="problems"><h2>Problems</h2><table><caption>Codes of problems</caption><thead><tr><th scope="col">Code</th><th scope="col">Status</th><th scope="col">Meaning</th></tr></thead><tbody>${codes}</tbody></table></section></main></body></html>`;
};
