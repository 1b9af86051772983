/** Questions made of the published tables: every cell asked in the ways different people ask it. */
import { readFileSync } from 'node:fs';
import { safetyTables } from '../../../src/safety/tables.js';
import { projectFile } from '../../../src/project-files.js';
import type { Figure } from './answer.js';
import type { Want } from './judge.js';

/** One thing that is asked; every wording must be answered. */
export interface Question {
  readonly table: string;
  readonly id: string;
  readonly asked: readonly string[];
  readonly want: Want;
  /** "2026-11-24T18:00", the household's time. */
  readonly at?: string;
  readonly region?: 'us' | 'uk';
  /** The language it is asked in, where that is not the household's. */
  readonly locale?: string;
  /** Said before it, in the same conversation. */
  readonly before?: readonly string[];
}

const IN_FRIDGE = [
  'how long can I keep {x} in the fridge',
  'how many days will {x} last in the refrigerator',
  "what's the limit for {x} in the fridge",
  "{x} in the fridge, how long's that good for",
];
const IN_FREEZER = [
  'how long can I keep {x} in the freezer',
  'how many months will {x} last frozen',
  'if I freeze {x} how long does it keep',
  "{x} in the freezer, how long's that good for",
];
const MAY_FREEZE = ['can I freeze {x}', 'how long can I keep {x} in the freezer', 'is it okay to freeze {x}'];

const put = (templates: readonly string[], names: readonly string[], turn: number): string[] =>
  // Each name with two ways of asking, so that a row of four names is asked eight times and not sixteen.
  names.flatMap((name, at) =>
    [turn + at, turn + at + 1].map((which) => templates[which % templates.length]!.replace('{x}', name)),
  );

const namesOf = (file: string): ReadonlyMap<string, readonly string[]> =>
  new Map(
    readFileSync(projectFile('tests', 'data', 'guidance', file), 'utf8')
      .split('\n')
      .filter((line) => line !== '' && !line.startsWith('#'))
      .map((line) => line.split('\t') as [string, string])
      .map(([id, names]) => [id, names.split('|')] as const),
  );

const figure = (span: Figure): Figure => ({ low: span.low, high: span.high, unit: span.unit });

/** The cold food chart and the other rows of the table of the United States, fridge and freezer. */
export const chartQuestions = (): readonly Question[] => {
  const rows = safetyTables().storage.us;
  return [...namesOf('chart-names.tsv')].flatMap(([id, names], at): Question[] => {
    const row = rows.get(id);
    if (!row) throw new Error(`chart-names.tsv: storage-us.csv has no row "${id}".`);
    const fridge: Question[] = row.fridge
      ? [{ table: 'chart, fridge', id, asked: put(IN_FRIDGE, names, at), want: { span: figure(row.fridge) } }]
      : [];
    if (row.freezer)
      return [
        ...fridge,
        {
          table: 'chart, freezer',
          id,
          asked: put(IN_FREEZER, names, at),
          want: { span: figure(row.freezer), quality: true },
        },
      ];
    if (!/not|never/u.test(row.freezer_note ?? '')) return fridge;
    return [
      ...fridge,
      {
        table: 'chart, freezer',
        id: `${id}, not frozen`,
        asked: put(MAY_FREEZE, names, at),
        want: { said: ['rather-not'] },
      },
    ];
  });
};

const CELLS = [
  ['pantry', ['how long does {x} keep in the pantry', '{x} in the cupboard, how long is it good']],
  [
    'pantry_opened',
    ['how long does opened {x} keep in the pantry', 'once opened how long is {x} good for in the cupboard'],
  ],
  ['fridge', ['how long does {x} keep in the fridge', '{x} in the fridge, how many days']],
  [
    'fridge_opened',
    [
      'how long does {x} keep in the fridge after opening',
      'I opened the {x}, how long is it good in the fridge',
    ],
  ],
  [
    'fridge_thawed',
    ['how long does thawed {x} keep in the fridge', 'after thawing how long is {x} good in the fridge'],
  ],
  ['freezer', ['how long does {x} keep in the freezer', 'how many months can I keep {x} frozen']],
] as const;

/** What a row is called: "cheese", "hard such as cheddar" is hard cheese. Made by rule, as nobody writes 661 names. */
const rowName = (food: string, type: string): string => {
  const [first = ''] = type.split(/[;,(]| such as | including /u);
  const own = first.replace(/-/gu, ' ').trim();
  if (own === '' || own.split(' ').length > 4) return food;
  return own.split(' ').some((word) => food.split(' ').includes(word)) ? own : `${own} ${food}`;
};

/** Cells of the USDA's storage data. @param stride Every so many rows; 1 for all. */
export const storageDataQuestions = (stride: number): readonly Question[] =>
  [...safetyTables().storageData.values()]
    .filter((_, at) => at % stride === 0)
    .flatMap((row) =>
      CELLS.flatMap(([cell, templates]): Question[] => {
        const span = row[cell];
        if (!span) return [];
        const name = rowName(row.food, row.type);
        const quality = cell === 'freezer' || cell.startsWith('pantry');
        return [
          {
            table: `storage data, ${cell.replace('_', ' ')}`,
            id: row.id,
            asked: templates.map((each) => each.replace('{x}', name)),
            want: { span: figure(span), quality },
          },
        ];
      }),
    );
