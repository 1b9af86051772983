/**
 * One page for family and visitors, in large print, out of the household's own markers, meanings and places:
 * what must not be eaten by whom, how things are told apart, what to say, and how to keep it up.
 */
import { countedHere, itemWithMarker, livingItems, placesIn } from '../kitchen/index.js';
import type { Kitchen, Place } from '../kitchen/model.js';
import { type Doc, newDocument } from './document.js';
import { touchInPrint } from './label.js';

export interface GuideSection {
  readonly heading: string;
  readonly lines: readonly string[];
  /** Never left off, however full the page is: what somebody must not eat. */
  readonly vital: boolean;
}

export interface Guide {
  readonly title: string;
  readonly sections: readonly GuideSection[];
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

const placeLine = (kitchen: Kitchen, { id, name }: Place): string => {
  const parts = placesIn(kitchen, id).map((part) => part.name);
  return parts.length > 0 ? `${capital(name)}: ${parts.join(', ')}` : capital(name);
};

const peopleLines = ({ people }: Kitchen): readonly string[] =>
  [...people.values()]
    .filter(({ allergens, atRisk }) => allergens.length > 0 || atRisk)
    .map(({ name, allergens, atRisk }) =>
      [
        ...(allergens.length > 0 ? [`${name} must not have ${allergens.join(', ')}.`] : []),
        ...(atRisk ? [`${name} is at higher risk from food: ask first.`] : []),
      ].join(' '),
    );

const meaningLines = (kitchen: Kitchen): readonly string[] => {
  const what = countedHere(kitchen);
  return Object.entries(kitchen.household.dotMeanings).map(
    ([n, meaning]) => `${n} ${what}${n === '1' ? '' : 's'}: ${meaning}`,
  );
};

const markerLines = (kitchen: Kitchen): readonly string[] =>
  [...kitchen.markers.values()].flatMap((marker) => {
    const on = itemWithMarker(kitchen, marker.id);
    const felt = touchInPrint(marker.touch);
    return on && felt ? [`${capital(felt)}: ${on.name}`] : [];
  });

/** What a visitor may say, with a food of this kitchen. */
const sayings = (kitchen: Kitchen): readonly string[] => {
  const [item] = livingItems(kitchen);
  return [
    ...(item ? [`“Where is the ${item.name}?”`] : []),
    '“I put milk on the fridge door, use by Friday.”',
    '“I finished the eggs.”  “Undo.”',
    '“What can I eat?”  “What should we use first?”',
  ];
};

const keepingUp: readonly string[] = [
  'Put things back where they were, the same way round.',
  'Say what you put in, move or finish, as you do it.',
  'Leave the markers on. One from an empty jar goes in the spare box.',
  'Ask before you tidy. When in doubt about food, throw it out.',
];

/** The guide in words, what matters most first. Sections that would be empty are left out. */
export const familyGuide = (kitchen: Kitchen): Guide => ({
  title: `How ${kitchen.household.name} works`,
  sections: [
    { heading: 'Careful', lines: peopleLines(kitchen), vital: true },
    { heading: 'What the markers say', lines: meaningLines(kitchen), vital: false },
    {
      heading: 'Where things are',
      lines: placesIn(kitchen, null).map((place) => placeLine(kitchen, place)),
      vital: false,
    },
    { heading: 'What to say', lines: sayings(kitchen), vital: false },
    { heading: 'How to keep it up', lines: keepingUp, vital: false },
    { heading: 'Markers in use', lines: markerLines(kitchen), vital: false },
  ].filter(({ lines }) => lines.length > 0),
});

const point = 72 / 25.4;
/** A4. */
const page = [210 * point, 297 * point] as const;
const margin = 15 * point;
/** Large print begins at eighteen points: American Printing House for the Blind, as others quote it (secondary). */
const textSize = 18;
const titleSize = 26;
const headingSize = 20;
const gap = 6;

/** How tall a text is, each measured once. */
const measuring = (doc: Doc, width: number): ((text: string, font: string, size: number) => number) => {
  const known = new Map<string, number>();
  return (text, font, size) => {
    const key = `${font} ${size} ${text}`;
    let height = known.get(key);
    if (height === undefined)
      known.set(key, (height = doc.font(font).fontSize(size).heightOfString(text, { width })));
    return height;
  };
};

const heightOf = ({ title, sections }: Guide, of: ReturnType<typeof measuring>): number => {
  return (
    of(title, 'bold', titleSize) +
    sections.reduce(
      (sum, { heading, lines }) =>
        sum +
        gap +
        of(heading, 'bold', headingSize) +
        lines.reduce((all, line) => all + of(line, 'regular', textSize), 0),
      0,
    )
  );
};

const more = (left: number): string => `… and ${left} more: ask.`;

/** Shorter by a line of the last section that is not vital and has more than one; null where nothing can go. */
const shorter = (guide: Guide, whole: Guide): Guide | null => {
  const at = guide.sections.findLastIndex(({ vital, lines }) => !vital && lines.length > 1);
  const section = guide.sections[at];
  if (!section) return null;
  const all = whole.sections.find(({ heading }) => heading === section.heading)!.lines;
  const shown = section.lines.filter((line) => !line.startsWith('… and ')).slice(0, -1);
  const lines = shown.length > 0 ? [...shown, more(all.length - shown.length)] : [];
  const kept = lines.length > 1 || shown.length > 0 ? [{ ...section, lines }] : [];
  // A section down to its last line goes whole.
  const sections = [
    ...guide.sections.slice(0, at),
    ...(shown.length > 1 ? kept : []),
    ...guide.sections.slice(at + 1),
  ];
  return { ...guide, sections };
};

export interface GuidePage {
  readonly pdf: Buffer;
  /** The guide as it was printed: what had no room is left off, and said to be. */
  readonly printed: Guide;
  readonly pages: number;
}

/** One page of A4 in large print; a second only where what somebody must not eat would else be left off. */
export const guidePage = async (whole: Guide): Promise<GuidePage> => {
  const { doc, finished } = newDocument({ title: whole.title, size: [...page], margin });
  const width = page[0] - 2 * margin;
  let guide = whole;
  const of = measuring(doc, width);
  while (heightOf(guide, of) > page[1] - 2 * margin) {
    const less = shorter(guide, whole);
    if (!less) break;
    guide = less;
  }
  let pages = 1;
  doc.on('pageAdded', () => (pages += 1));
  doc.font('bold').fontSize(titleSize).text(guide.title, { width });
  for (const { heading, lines } of guide.sections) {
    doc.moveDown(gap / headingSize);
    doc.font('bold').fontSize(headingSize).text(heading, { width });
    doc.font('regular').fontSize(textSize);
    for (const line of lines) doc.text(line, { width });
  }
  doc.end();
  return { pdf: await finished, printed: guide, pages };
};

/** The lines of the guide in order, for Braille. */
export const guideLines = ({ title, sections }: Guide): readonly string[] => [
  title,
  ...sections.flatMap(({ heading, lines }) => [heading, ...lines]),
];
