/** `tellshelf labels`: print sheets and Braille files from the command line. */
import { writeFile } from 'node:fs/promises';
import type { Command } from 'commander';
import type { Item, Kitchen } from '../kitchen/model.js';

interface Options {
  readonly data: string;
  readonly household?: string;
  readonly stock: string;
  readonly size?: string;
  readonly grade: string;
  readonly pdf?: string;
  readonly brf?: string;
  readonly address?: string;
  readonly markers: boolean;
  readonly guide: boolean;
}

const out = (line: string): void => void process.stdout.write(`${line}\n`);

const counted = (count: number, what: string): string => `${count} ${what}${count === 1 ? '' : 's'}`;

const sizeOf = (text: string): [number, number] => {
  const [width, height] = text.split(/[x×]/).map(Number);
  if (!(width !== undefined && height !== undefined && width > 0 && height > 0))
    throw new Error('Say the size as width and height in millimetres, for example 90x60.');
  return [width, height];
};

/** The page for family and visitors, in large print, in Braille or both. */
const guide = async (kitchen: Kitchen, { pdf, brf, grade }: Options): Promise<void> => {
  const labels = await import('../labels/index.js');
  const whole = labels.familyGuide(kitchen);
  if (pdf !== undefined) {
    const made = await labels.guidePage(whole);
    await writeFile(pdf, made.pdf);
    out(`${pdf}: the guide, on ${made.pages === 1 ? 'one page' : `${made.pages} pages`}.`);
  }
  if (brf !== undefined) {
    const cells = await labels.toBraille([...labels.guideLines(whole)], grade === '1' ? 1 : 2);
    await writeFile(
      brf,
      labels.brfFile([cells.map((line) => line ?? '')], { cells: 40, lines: 25 }),
      'ascii',
    );
    out(`${brf}: the guide in Braille.`);
  }
  if (pdf === undefined && brf === undefined) for (const line of labels.guideLines(whole)) out(line);
};

const make = async (names: readonly string[], options: Options): Promise<void> => {
  const { livingItems } = await import('../kitchen/index.js');
  const { openStore } = await import('./open-store.js');
  const { chooseHousehold } = await import('./which-household.js');
  const labels = await import('../labels/index.js');
  const store = await openStore({ data: options.data });
  try {
    const kitchen = await store.loadKitchen(await chooseHousehold(store, options.household));
    if (kitchen === null) throw new Error('There is no such household here.');
    if (options.guide) return await guide(kitchen, options);
    const fits = (item: Item): boolean =>
      names.length === 0 || names.some((name) => item.name.toLowerCase().includes(name.toLowerCase()));
    const service = options.address ?? null;
    const made = [
      ...(names.length === 0 && options.markers ? [] : livingItems(kitchen).filter(fits)).map((item) =>
        labels.labelForItem(kitchen, item, service),
      ),
      ...(options.markers ? [...kitchen.markers.values()] : []).map((marker) =>
        labels.labelForMarker(kitchen, marker, service),
      ),
    ];
    if (made.length === 0) throw new Error('Nothing here has such a name.');
    if (!['1', '2', 'none'].includes(options.grade)) throw new Error('The grade is 1, 2 or none.');
    const grade = options.grade === 'none' ? null : options.grade === '1' ? 1 : 2;
    if (options.pdf !== undefined) {
      const stock =
        options.size === undefined
          ? labels.loadStocks().find(({ id }) => id === options.stock)
          : labels.freeStock(sizeOf(options.size));
      if (stock === undefined)
        throw new Error(
          `There is no such sheet. There are: ${labels
            .loadStocks()
            .map(({ id }) => id)
            .join(', ')}.`,
        );
      const sheet = await labels.labelSheet(made, { stock, grade });
      await writeFile(options.pdf, sheet.pdf);
      out(`${options.pdf}: ${counted(made.length, 'label')} on ${counted(sheet.pages, 'sheet')}.`);
      for (const note of sheet.notes) out(note);
    }
    if (options.brf !== undefined) {
      const texts = made.map((label) => [label.title, ...label.brailleLines]);
      const cells = (await labels.toBraille(texts.flat(), grade ?? 2)).values();
      const lines = texts.map((own) => own.map(() => cells.next().value ?? ''));
      await writeFile(options.brf, labels.brfFile(lines, { cells: 40, lines: 25 }), 'ascii');
      out(`${options.brf}: ${counted(made.length, 'label')} in Braille.`);
    }
    if (options.pdf === undefined && options.brf === undefined) out('Say --pdf FILE or --brf FILE.');
  } finally {
    await store.close();
  }
};

export const addLabelsCommand = (program: Command): void => {
  program
    .command('labels')
    .description('labels in large print and Braille for items (all, or those with these names) or markers')
    .argument('[names...]', 'items whose names hold these words')
    .option('--markers', 'labels for the markers too; alone, only those', false)
    .option('--guide', 'a page for family and visitors instead: markers, places, what to say', false)
    .option('--pdf <file>', 'write a print sheet')
    .option('--brf <file>', 'write a file for an embosser, 40 cells by 25 lines')
    .option('--stock <id>', 'sheet of labels by size', 'a4-2x4')
    .option('--size <mm>', 'a label of a size of your own, width by height: 90x60')
    .option('--grade <grade>', 'Unified English Braille: 1, 2 or none', '2')
    .option('--address <url>', 'where the service is reached, for the square codes')
    .option('--data <dir>', 'folder of the embedded store', '.data')
    .option('--household <id>', 'which household, when there are several')
    .action((names: string[], options: Options) => make(names, options));
};
