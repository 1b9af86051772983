/**
 * A sheet of labels as PDF: real text at 18 points or more, Braille as drawn dots,
 * and a square code whose corners a finger can find once they are raised.
 */
import QRCode from 'qrcode';
import { readFileSync } from 'node:fs';
import { z } from 'zod';
import { projectFile } from '../project-files.js';
import { BrailleUnavailable, dotsOf, toBraille, type BrailleGrade } from './braille.js';
import { type Doc, newDocument } from './document.js';
import { wrapCells } from './brf.js';
import type { Label } from './label.js';
import type { Stock } from './stocks.js';

const dots = z
  .object({ dotDiameter: z.number(), dotPitch: z.number(), cellPitch: z.number(), linePitch: z.number() })
  .parse(JSON.parse(readFileSync(projectFile('shared', 'labels', 'braille-dots.json'), 'utf8')));

const point = 72 / 25.4;
const titleSize = 22;
/** The smallest print on a label, in points. */
const textSize = 18;
const margin = 3;
const codeSize = 24;
const outline = 1.6;

export interface SheetOptions {
  readonly stock: Stock;
  /** Null: no Braille. */
  readonly grade: BrailleGrade | null;
  /** Labels already used on the first sheet. */
  readonly skip?: number;
}

export interface Sheet {
  readonly pdf: Buffer;
  readonly pages: number;
  /** What could not be done, in sentences: no Braille program, lines left off a small label. */
  readonly notes: readonly string[];
}

interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Draws the code and four thick corner brackets round it, to be raised with tactile paint or tape. */
const drawCode = (doc: Doc, address: string, box: Box): void => {
  const { modules } = QRCode.create(address, { errorCorrectionLevel: 'M' });
  // Four modules of quiet zone on each side, as ISO/IEC 18004 asks.
  const step = (box.width - 2 * outline) / (modules.size + 8);
  const start = outline + 4 * step;
  doc.save();
  doc.fillColor('black');
  for (let row = 0; row < modules.size; row++)
    for (let column = 0; column < modules.size; column++)
      if (modules.get(row, column))
        doc.rect(box.x + start + column * step, box.y + start + row * step, step, step);
  doc.fill();
  const arm = box.width / 4;
  doc.lineWidth(outline).lineCap('square').strokeColor('black');
  const inset = outline / 2;
  for (const [cornerX, alongX] of [
    [box.x + inset, arm],
    [box.x + box.width - inset, -arm],
  ] as const)
    for (const [cornerY, alongY] of [
      [box.y + inset, arm],
      [box.y + box.width - inset, -arm],
    ] as const)
      doc
        .moveTo(cornerX + alongX, cornerY)
        .lineTo(cornerX, cornerY)
        .lineTo(cornerX, cornerY + alongY)
        .stroke();
  doc.restore();
};

const drawCells = (doc: Doc, cells: string, x: number, y: number): void => {
  const radius = (dots.dotDiameter / 2) * point;
  [...cells].forEach((cell, index) => {
    for (const dot of dotsOf(cell)) {
      const column = dot > 3 ? 1 : 0;
      const row = (dot - 1) % 3;
      doc.circle(
        x + (index * dots.cellPitch + column * dots.dotPitch) * point + radius,
        y + row * dots.dotPitch * point + radius,
        radius,
      );
    }
  });
  doc.fill('black');
};

/** One way to fill a label: the title in print, and so much of the rest. */
interface Layout {
  readonly titlePoints: number;
  readonly withCode: boolean;
  /** How many lines of print after the title. */
  readonly printLines: number;
  /** How many lines of Braille, the title's first. */
  readonly brailleLines: number;
}

interface PrintLine {
  readonly text: string;
  readonly font: string;
  readonly size: number;
  readonly height: number;
}

/** What a title's size and the code leave room for, measured once for all numbers of lines. */
interface Measured {
  readonly titlePoints: number;
  readonly withCode: boolean;
  readonly room: number;
  readonly print: readonly PrintLine[];
  /** Each Braille line as rows of cells. */
  readonly braille: readonly (readonly string[])[];
}

const measure = (
  doc: Doc,
  label: Label,
  braille: readonly string[],
  box: Box,
  titlePoints: number,
  withCode: boolean,
): Measured | null => {
  const room = box.width - 2 * margin * point - (withCode ? (codeSize + margin) * point : 0);
  const cells = Math.floor(room / (dots.cellPitch * point));
  if (cells < 1) return null;
  const print = [label.title, ...label.lines].map((text, index) => {
    const font = index === 0 ? 'bold' : 'regular';
    const size = index === 0 ? titlePoints : textSize;
    return { text, font, size, height: doc.font(font).fontSize(size).heightOfString(text, { width: room }) };
  });
  return { titlePoints, withCode, room, print, braille: braille.map((line) => wrapCells(line, cells)) };
};

const heightOf = (measured: Measured, printLines: number, brailleLines: number): number =>
  measured.print.slice(0, 1 + printLines).reduce((sum, line) => sum + line.height, 0) +
  measured.braille.slice(0, brailleLines).flat().length * dots.linePitch * point;

/**
 * How good a layout is, by what it holds, compared part by part: the name and the allergens for the hand,
 * then for the eye, the square code, what else there is in print, then in Braille, and last a large title.
 */
const worth = (label: Label, layout: Layout): readonly number[] => [
  Math.min(layout.brailleLines, 1 + label.vital),
  Math.min(layout.printLines, label.vital),
  layout.withCode ? 1 : 0,
  Math.min(layout.printLines, 1 + label.vital),
  layout.brailleLines,
  layout.printLines,
  layout.titlePoints,
];

const better = (one: readonly number[], other: readonly number[]): boolean => {
  const at = one.findIndex((part, index) => part !== other[index]);
  return at >= 0 && (one[at] ?? 0) > (other[at] ?? 0);
};

interface Plan extends Layout {
  readonly measured: Measured;
}

/** The best of all layouts that fit; the title alone where none does, since a name must stand on a label. */
const choose = (doc: Doc, label: Label, braille: readonly string[], box: Box): Plan | null => {
  const available = box.height - 2 * margin * point;
  let best: Plan | null = null;
  for (const titlePoints of [titleSize, textSize])
    for (const withCode of label.address === null || codeSize * point > available ? [false] : [true, false]) {
      const measured = measure(doc, label, braille, box, titlePoints, withCode);
      if (measured === null) continue;
      for (let printLines = 0; printLines <= label.lines.length; printLines++)
        for (let brailleLines = 0; brailleLines <= braille.length; brailleLines++) {
          const plan = { titlePoints, withCode, printLines, brailleLines, measured };
          const fits = heightOf(measured, printLines, brailleLines) <= available;
          if (fits && (best === null || better(worth(label, plan), worth(label, best)))) best = plan;
        }
    }
  if (best !== null) return best;
  const measured = measure(doc, label, [], box, textSize, false);
  return measured && { titlePoints: textSize, withCode: false, printLines: 0, brailleLines: 0, measured };
};

/** Draws one label; answers with what had to be left off. */
const drawLabel = (doc: Doc, label: Label, braille: readonly string[], box: Box): string[] => {
  const chosen = choose(doc, label, braille, box);
  if (chosen === null) return ['anything'];
  const { measured, withCode, printLines, brailleLines } = chosen;
  const left: string[] = [];
  const x = box.x + margin * point;
  const top = box.y + margin * point;
  const bottom = box.y + box.height - margin * point;
  if (withCode && label.address !== null) {
    const code = codeSize * point;
    const codeLeft = box.x + box.width - code - margin * point;
    drawCode(doc, label.address, { x: codeLeft, y: top, width: code, height: code });
  } else if (label.address !== null) left.push('the square code');
  let y = top;
  for (const line of measured.print.slice(0, 1 + printLines)) {
    doc
      .font(line.font)
      .fontSize(line.size)
      .fillColor('black')
      .text(line.text, x, y, { width: measured.room, height: bottom - y, ellipsis: true });
    y += line.height;
  }
  if (y > bottom + 1) left.push('the whole name');
  for (const line of label.lines.slice(printLines)) left.push(`“${line}”`);
  const rows = measured.braille.slice(0, brailleLines).flat();
  const brailleTop = bottom - rows.length * dots.linePitch * point;
  rows.forEach((cells, index) => drawCells(doc, cells, x, brailleTop + index * dots.linePitch * point));
  if (brailleLines === 0 && braille.length > 0) left.push('the Braille');
  else if (braille.length > 0)
    for (const line of label.brailleLines.slice(Math.max(0, brailleLines - 1), braille.length - 1))
      left.push(`“${line}” in Braille`);
  return left;
};

/** Lays labels out over sheets of a stock. Deterministic: no time stamp goes into the file. */
export const labelSheet = async (labels: readonly Label[], options: SheetOptions): Promise<Sheet> => {
  const { stock, grade, skip = 0 } = options;
  const notes: string[] = [];
  let braille: string[][] = labels.map(() => []);
  if (grade !== null)
    try {
      const lines = labels.map((label) => [label.title, ...label.brailleLines]);
      const cells = await toBraille(lines.flat(), grade);
      let next = 0;
      braille = lines.map((own) => {
        const ours = cells.slice(next, (next += own.length));
        return ours.every((line) => line !== null) ? ours : [];
      });
      lines.forEach((own, index) => {
        if (own.some((line) => line !== '') && braille[index]?.length === 0)
          notes.push(
            `${own[0] ?? ''}: no Braille, for it has letters that the English Braille table does not hold.`,
          );
      });
    } catch (error) {
      if (!(error instanceof BrailleUnavailable)) throw error;
      notes.push('Braille is missing: the liblouis program lou_translate is not installed here.');
    }

  const { doc, finished } = newDocument({
    title: 'Kitchen labels',
    size: [stock.page[0] * point, stock.page[1] * point],
    margin: 0,
    autoFirstPage: false,
  });

  const perPage = stock.columns * stock.rows;
  let page = -1;
  labels.forEach((label, index) => {
    const slot = index + skip;
    if (Math.floor(slot / perPage) !== page) {
      page = Math.floor(slot / perPage);
      doc.addPage();
    }
    const at = slot % perPage;
    const left = drawLabel(doc, label, braille[index] ?? [], {
      x: (stock.first[0] + (at % stock.columns) * stock.pitch[0]) * point,
      y: (stock.first[1] + Math.floor(at / stock.columns) * stock.pitch[1]) * point,
      width: stock.size[0] * point,
      height: stock.size[1] * point,
    });
    if (left.length > 0)
      notes.push(`${label.title}: no room for ${left.join(', ')}. A larger label would hold it.`);
  });
  if (labels.length === 0) doc.addPage();
  doc.end();
  const pdf = await finished;
  return { pdf, pages: Math.max(1, Math.ceil((labels.length + skip) / perPage)), notes };
};
