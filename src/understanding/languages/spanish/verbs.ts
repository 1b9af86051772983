/**
 * Verbs in the forms people tell of a kitchen with: done ("puse", "he puesto"), being done ("pongo", "poniendo"),
 * asked for ("pon", "ponga"). What will, would or should be done has none of these forms. Irregular stems stand in
 * `grammars/es/words/verbs.json`.
 */
import { readFileSync } from 'node:fs';
import { z } from 'zod';
import { projectFile } from '../../../project-files.js';

const file = z.object({
  regular: z.array(z.string()),
  irregular: z.record(
    z.string(),
    z.object({
      /** First person of the present: "pongo". */
      present: z.string().optional(),
      /** Stem of the present under stress: "cierr", "pued". */
      stressed: z.string().optional(),
      /** Stem of the preterite with the endings e, o, imos, ieron: "pus". */
      strong: z.string().optional(),
      /** Third persons of the preterite, where only they differ: "sirvió". */
      third: z.tuple([z.string(), z.string()]).optional(),
      participle: z.string().optional(),
      gerund: z.string().optional(),
      imperative: z.string().optional(),
      /** The polite imperative, where it is like nothing else: "vaya". */
      polite: z.string().optional(),
      /** All six persons of the preterite that are like nothing else: "fui, fuimos, fue, fueron". */
      preterite: z.tuple([z.string(), z.string(), z.string(), z.string()]).optional(),
      presents: z.tuple([z.string(), z.string(), z.string(), z.string()]).optional(),
    }),
  ),
  /** Forms that are another word first: "como", "cocina". */
  notVerbs: z.array(z.string()),
  /** Imperatives of one syllable, which take a pronoun without an accent: "ponlo". */
  short: z.array(z.string()),
});

export type Person = 'first' | 'third' | 'bid' | 'none';
export interface VerbForm {
  readonly verb: string;
  /** Who does it, by the ending; `bid`: asked for; `none`: infinitive, gerund, participle. */
  readonly person: Person;
  readonly kind: 'finite' | 'infinitive' | 'gerund' | 'participle';
  /** The speaker's own present, which is as often a plan: "tiro". */
  readonly plans: boolean;
}

type Irregular = z.infer<typeof file>['irregular'][string];

/** "saqu" of "sac", "lleg" becomes "llegu": the sound is kept before e. */
const beforeE = (stem: string): string =>
  stem.endsWith('c')
    ? `${stem.slice(0, -1)}qu`
    : stem.endsWith('gu')
      ? `${stem.slice(0, -1)}ü`
      : stem.endsWith('g')
        ? `${stem}u`
        : stem.endsWith('z')
          ? `${stem.slice(0, -1)}c`
          : stem;

const pluralOf = (participle: string): readonly string[] => [
  participle,
  participle.replace(/o$/, 'a'),
  `${participle}s`,
  participle.replace(/o$/, 'as'),
];

const preteriteOf = (
  stem: string,
  ar: boolean,
  given: Irregular,
): readonly [string, string, string, string] => {
  if (given.preterite) return given.preterite;
  if (given.strong) {
    const ieron = given.strong.endsWith('j') ? 'eron' : 'ieron';
    return [`${given.strong}e`, `${given.strong}imos`, `${given.strong}o`, `${given.strong}${ieron}`];
  }
  const third = given.third ?? (ar ? [`${stem}ó`, `${stem}aron`] : [`${stem}ió`, `${stem}ieron`]);
  return ar ? [`${beforeE(stem)}é`, `${stem}amos`, ...third] : [`${stem}í`, `${stem}imos`, ...third];
};

const formsOfVerb = (verb: string, given: Irregular): ReadonlyMap<string, VerbForm> => {
  const stem = verb.replace(/[aeií]r$/, '');
  const ar = verb.endsWith('ar');
  const stressed = given.stressed ?? stem;
  const forms = new Map<string, VerbForm>();
  const put = (form: string, person: Person, kind: VerbForm['kind'] = 'finite', plans = false): void => {
    if (form.length > 1 && !forms.has(form)) forms.set(form, { verb, person, kind, plans });
  };
  const [i, we, who, they] = preteriteOf(stem, ar, given);
  put(i, 'first');
  // Written without its accent, as recognisers and thumbs do; of -ar verbs that is the polite imperative.
  if (!ar && i.endsWith('í')) put(`${i.slice(0, -1)}i`, 'first');
  put(we, 'first');
  put(who, 'third');
  put(they, 'third');
  const [pI, pWe, pWho, pThey] = given.presents ?? [
    given.present ?? `${stressed}o`,
    `${stem}${ar ? 'amos' : verb.endsWith('er') ? 'emos' : 'imos'}`,
    `${stressed}${ar ? 'a' : 'e'}`,
    `${stressed}${ar ? 'an' : 'en'}`,
  ];
  put(pI, 'first', 'finite', true);
  put(pWe, 'first', 'finite', true);
  // "Guarda la leche" bids as well as tells; who does it is said beside it, if anybody.
  put(given.imperative ?? pWho, 'bid');
  put(pWho, 'bid');
  put(pThey, 'third');
  const polite = given.present ? given.present.slice(0, -1) : stressed;
  const ask = given.polite ?? (ar ? `${beforeE(stressed)}e` : `${polite}a`);
  put(ask, 'bid');
  put(`${ask}n`, 'bid');
  put(`${ar ? `${beforeE(stem)}e` : `${given.present ? polite : stem}a`}mos`, 'bid');
  put(`${verb.slice(0, -1)}d`, 'bid');
  put(verb, 'none', 'infinitive');
  put(given.gerund ?? `${stem}${ar ? 'ando' : 'iendo'}`, 'none', 'gerund');
  for (const form of pluralOf(given.participle ?? `${stem}${ar ? 'ado' : 'ido'}`))
    put(form, 'none', 'participle');
  return forms;
};

interface Verbs {
  readonly formOf: (word: string) => VerbForm | undefined;
  readonly forms: (verb: string) => ReadonlyMap<string, VerbForm>;
  readonly isShort: (word: string) => boolean;
}

let read: Verbs | undefined;

/** @throws ZodError for a file of another form. */
export const verbs = (): Verbs => {
  if (!read) {
    const given = file.parse(
      JSON.parse(readFileSync(projectFile('grammars', 'es', 'words', 'verbs.json'), 'utf8')),
    );
    const not = new Set(given.notVerbs);
    const byVerb = new Map<string, ReadonlyMap<string, VerbForm>>();
    const byForm = new Map<string, VerbForm>();
    const all = [...given.regular.map((verb) => [verb, {}] as const), ...Object.entries(given.irregular)];
    for (const [verb, parts] of all) {
      const forms = new Map([...formsOfVerb(verb, parts)].filter(([form]) => !not.has(form)));
      byVerb.set(verb, forms);
      for (const [form, what] of forms) if (!byForm.has(form)) byForm.set(form, what);
    }
    const short = new Set(given.short);
    const none: ReadonlyMap<string, VerbForm> = new Map();
    read = {
      formOf: (word) => byForm.get(word),
      forms: (verb) => byVerb.get(verb) ?? none,
      isShort: (word) => short.has(word),
    };
  }
  return read;
};

const isOf = ({ person, kind, plans }: VerbForm, by: string): boolean =>
  by === 'told'
    ? !plans && kind !== 'infinitive'
    : person === by ||
      (by === 'first' && (kind === 'infinitive' || kind === 'gerund')) ||
      (by === 'bid' && kind === 'infinitive');

/**
 * "~meter" is all its forms, "~tirar:told" all but what may only be planned ("mañana tiro", "voy a tirar"), "~tirar a la basura" each with what follows; "~traer:first" only what the speaker did,
 * "~traer:third" what somebody else did. Any other phrase is itself.
 * @throws Error for a verb that verbs.json does not hold.
 */
export const formsOfPhrase = (phrase: string): readonly string[] => {
  if (!phrase.startsWith('~')) return [phrase];
  const [head = '', ...rest] = phrase.slice(1).split(' ');
  const [verb = '', ...narrowed] = head.split(':');
  const forms = verbs().forms(verb);
  if (forms.size === 0) throw new Error(`grammars/es/words/verbs.json has no verb "${verb}"`);
  return [...forms]
    .filter(([, form]) => narrowed.every((by) => isOf(form, by)))
    .map(([form]) => [form, ...rest].join(' '));
};
