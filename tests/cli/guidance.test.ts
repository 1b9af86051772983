import { Command } from 'commander';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { addGuidanceCommand } from '../../src/cli/guidance.js';

/** What the command prints, or the error it gives. */
const run = async (...args: string[]): Promise<string> => {
  let printed = '';
  vi.spyOn(process.stdout, 'write').mockImplementation((text) => {
    printed += String(text);
    return true;
  });
  const program = new Command('tellshelf').exitOverride().configureOutput({ writeErr: () => {} });
  addGuidanceCommand(program);
  for (const command of program.commands) command.exitOverride().configureOutput({ writeErr: () => {} });
  await program.parseAsync(['guidance', '--zone', 'America/Chicago', ...args], { from: 'user' });
  return printed;
};
afterEach(() => void vi.restoreAllMocks());

describe('tellshelf guidance', () => {
  it('takes no place for granted: each has its own finding', async () => {
    const text = await run('chicken', '--raw', '--region', 'us');
    for (const where of ['fridge', 'freezer', 'pantry']) expect(text).toContain(`Where: ${where}`);
    expect(await run('chicken', '--where', 'fridge', '--region', 'us')).not.toContain('Where:');
  });
  it('prints verdict, row and source', async () => {
    const text = await run('cooked', 'rice', '--where', 'fridge', '--days', '5', '--region', 'us');
    expect(text).toContain('Verdict: throw-out');
    expect(text).toContain('Row: leftovers-general: Leftovers, any cooked food: 3 to 4 days');
    expect(text).toContain('Source: USDA FSIS, Leftovers and Food Safety');
  });
  it.each([
    [['hot dogs', '--opened', '--days', '8', '--region', 'us'], 'Verdict: throw-out'],
    [['hot dogs', '--days', '8', '--region', 'us'], 'Verdict: fine'],
    [['lamb', '--raw', '--days', '4', '--region', 'us'], 'Row: roasts'],
    [['chicken', '--thawed', '--days', '2', '--region', 'us'], 'Verdict: last-day'],
    [['soup', '--days', '3'], 'Why: stricter-region'],
    [['cooked chicken', '--region', 'us'], 'Verdict: how-long'],
    [['quandong', '--days', '1', '--region', 'us'], 'not in the table'],
    [
      [
        'curry',
        '--made',
        '2026-11-22',
        '--frozen',
        '2026-11-24',
        '--thawed',
        '2026-12-10',
        '--today',
        '2026-12-10',
        '--region',
        'us',
      ],
      'Last day: 2026-12-12',
    ],
    [['brie', '--days', '1', '--at-risk', '--region', 'us'], 'Caution: at-risk-soft-cheese'],
    [['pork chop', '--temp', '--reads', '145F', '--rested', '2', '--region', 'us'], 'moreSeconds: 60'],
    [['stew', '--temp', '--reads', '75C', '--held', '20', '--region', 'uk'], 'reached: false'],
    [['gravy', '--temp', '--reheating', '--reads', '180F', '--region', 'us'], 'boil-wanted'],
    [['--fridge-reads', '41F', '--region', 'us'], 'fridge-too-warm'],
    [['lasagne', '--left-out', '2h10', '--region', 'us'], 'verdict: throw-out'],
    [['potato salad', '--left-out', '75', '--air', '92F', '--region', 'us'], 'verdict: throw-out'],
    [['soup', '--left-out', 'unknown', '--region', 'us'], 'verdict: unknown'],
    [['mayonnaise', '--power-cut', '9', '--above40', '7', '--reads', '55F'], 'verdict: keep'],
    [['peas', '--where', 'freezer', '--power-cut', '60', '--above40', '3', '--no-ice'], 'verdict: use-now'],
    [['rice', '--reheat', 'microwave', '--reheated', '1', '--region', 'uk'], 'refusal: reheated-already'],
    [
      ['turkey', '--thaw', '18', '--by', '2026-12-04T12:00', '--today', '2026-11-25', '--region', 'us'],
      'hours high: 120',
    ],
    [['shrimp', '--refreeze', 'cold-water', '--region', 'us'], 'may: cook-first'],
    [
      ['chicken', '--freeze', '--use-by', '2026-11-25', '--now', '2026-11-26T00:10', '--region', 'uk'],
      'may: no',
    ],
    [['--microwave', '5:00@1000-700'], 'seconds: 430'],
    [['--scale-portions', '3:00@1-2'], 'latestSeconds: 360'],
    [['--printed', 'B=6:00,D=5:00,650=6:00,750=5:00', '--watts', '750', '--letter', 'D'], 'seconds: 300'],
    [['--claim', 'us-low-sodium-meal', '--amount', '430', '--grams', '300'], 'met: false'],
    [['--gs1', '(17)270229', '--today', '2026-11-25'], 'problem: no-such-day'],
    [['--gtin', '6291041500214'], 'checkDigit: 3'],
    [['--cooling', '18:00,19:00,00:05'], 'passes: false'],
    [['--cooling', '14:00,17:55'], 'passes: true'],
    [['--hot-hold', '11:00,12:50'], 'passes: true'],
    [
      ['--date-mark', '2026-10-01', '--frozen', '2026-10-03', '--thawed', '2026-10-10'],
      'lastDay: 2026-10-14',
    ],
    [['--formula', '10:00,11:20,12:05'], 'verdict: discard'],
    [['--allergens', '--region', 'us'], 'sesame'],
    [['peanut butter', '--allergens'], 'usuallyContains: peanuts'],
    [['--egg-pack', '182', '--today', '2026-07-02'], 'sellByAtLatest: 2026-07-31'],
    [['--front-of-pack', 'salt', '--amount', '1.6'], 'level: high'],
    [['--daily-value', '5'], 'level: low'],
    [['--home-canned', '5000'], 'minutes: 15'],
    [['--boil-test', '240'], 'watts: 625'],
    [['--rows', '--region', 'uk'], 'rows id: uk-leftovers'],
  ])('%j: %s', async (args, expected) => expect(await run(...args)).toContain(expected));
  it('gives the whole finding as JSON', async () => {
    const found = JSON.parse(
      await run('--where', 'fridge', 'soup', '--days', '2', '--region', 'us', '--json'),
    );
    expect(found).toMatchObject({
      verdict: 'fine',
      row: { id: 'soups-stews', source: { agency: 'FoodSafety.gov', region: 'us', basis: 'copy' } },
    });
  });
  it.each([
    [['soup', '--days', 'many'], /not a number/],
    [['soup', '--made', '2026-02-30'], /not a day/],
    [['soup', '--temp', '--reads', 'hot'], /not a temperature/],
    [['--days', '3'], /Name a food/],
    [['--claim', 'tasty', '--amount', '1'], /There is no claim/],
  ])('%j is refused with what is wrong', async (args, problem) => {
    await expect(run(...args)).rejects.toThrow(problem);
  });
  it('never says that food is safe', async () => {
    for (const days of ['0', '3', '4', '9']) {
      expect(await run('soup', '--days', days, '--region', 'us')).not.toMatch(/\bsafe\b/i);
    }
  });
});
