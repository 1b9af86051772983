/** The page for family and visitors: out of the household's own system, one page, allergies first and never left off. */
import { describe, expect, it } from 'vitest';
import { demoKitchen } from '../../src/kitchen/index.js';
import type { Kitchen, Person } from '../../src/kitchen/model.js';
import { familyGuide, guideLines, guidePage } from '../../src/labels/index.js';

const demo = demoKitchen({ now: '2026-05-14T23:00:00.000Z', timeZone: 'America/Chicago' });

describe('the family guide', () => {
  const guide = familyGuide(demo);
  const text = guideLines(guide).join('\n');

  it('says first who must not have what, then the meanings, places, words and habits of this kitchen', () => {
    expect(guide.sections[0]).toMatchObject({ heading: 'Careful', vital: true });
    const watched = [...demo.people.values()].filter(({ allergens }) => allergens.length > 0);
    for (const { name, allergens } of watched) {
      expect(text).toContain(`${name} must not have`);
      for (const allergen of allergens) expect(text).toContain(allergen);
    }
    for (const meaning of Object.values(demo.household.dotMeanings)) expect(text).toContain(meaning);
    expect(text).toContain('Chest freezer: left basket, middle basket, right basket');
  });

  it('leaves out what there is none of', () => {
    const bare: Kitchen = {
      ...demo,
      people: new Map(),
      markers: new Map(),
      places: new Map(),
      items: new Map(),
    };
    const headings = familyGuide(bare).sections.map(({ heading }) => heading);
    expect(headings).not.toContain('Careful');
    expect(headings).not.toContain('Markers in use');
    expect(headings).toContain('How to keep it up');
  });

  it('fits one page, and says how much it left off', async () => {
    const { pages, printed, pdf } = await guidePage(guide);
    expect(pages).toBe(1);
    expect(pdf.subarray(0, 5).toString()).toBe('%PDF-');
    expect(printed.sections[0]).toEqual(guide.sections[0]);
    const left = printed.sections.some(({ lines }) => lines.some((line) => /^… and \d+ more/.test(line)));
    expect(left || printed.sections.length < guide.sections.length).toBe(true);
  });

  it('leaves no allergy off, however many there are', async () => {
    const many = new Map(
      Array.from({ length: 40 }, (_, n): [string, Person] => [
        `p${n}`,
        { id: `p${n}`, name: `Guest ${n}`, eatsHere: true, allergens: ['peanuts'], atRisk: false },
      ]),
    );
    const { pages, printed } = await guidePage(familyGuide({ ...demo, people: many }));
    expect(printed.sections[0]!.lines).toHaveLength(40);
    expect(pages).toBeGreaterThan(1);
  });

  it('is the same each time it is printed', async () => {
    const [one, other] = await Promise.all([guidePage(guide), guidePage(guide)]);
    expect(one.pdf.equals(other.pdf)).toBe(true);
  });
});
