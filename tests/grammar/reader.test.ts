/** Reading SRGS 1.0 files: what is accepted, what is refused and how that is told. Sections of the Recommendation. */
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { GrammarError, loadGrammar, parseGrammarText } from '../../src/grammar/index.js';
import type { GrammarProblem } from '../../src/grammar/index.js';
import { readAbnf } from '../../src/grammar/reader.js';
import { openGrammarFile } from '../../src/grammar/tools.js';

const VOICE = '#ABNF 1.0;\nlanguage en;\n';
const words = (text: string): string[] => (text === '' ? [] : text.split(' '));
const accepts = (rules: string, text: string): boolean =>
  parseGrammarText(VOICE + rules).parse(words(text)).length > 0;
const problemsOf = (read: () => unknown): readonly GrammarProblem[] => {
  try {
    read();
  } catch (error) {
    if (error instanceof GrammarError) return error.problems;
    throw error;
  }
  return [];
};
const refused = (text: string): readonly GrammarProblem[] => problemsOf(() => parseGrammarText(text));

describe('the header (sections 4.1 to 4.12)', () => {
  it.each([
    ['no header', 'language en; $a = x;'],
    ['a comment before it', '/* c */ #ABNF 1.0;\nlanguage en;\n$a = x;'],
    ['white space before it', ' #ABNF 1.0;\nlanguage en;\n$a = x;'],
    ['no semicolon', '#ABNF 1.0\nlanguage en;\n$a = x;'],
    ['no version', '#ABNF;\nlanguage en;\n$a = x;'],
    ['another version', '#ABNF 2.0;\nlanguage en;\n$a = x;'],
    ['small letters', '#abnf 1.0;\nlanguage en;\n$a = x;'],
    ['something else on its line', '#ABNF 1.0; language en;\n$a = x;'],
    ['no language', '#ABNF 1.0;\nmode voice;\n$a = x;'],
    ['two languages', `${VOICE}language fr;\n$a = x;`],
    ['a language that is no code', '#ABNF 1.0;\nlanguage en_US;\n$a = x;'],
    ['two modes', `${VOICE}mode voice; mode voice;\n$a = x;`],
    ['an unknown mode', `${VOICE}mode speech;\n$a = x;`],
    ['two roots', `${VOICE}root $a; root $a;\n$a = x;`],
    ['an undefined root', `${VOICE}root $b;\n$a = x;`],
    ['two tag formats', `${VOICE}tag-format <a>; tag-format <b>;\n$a = x;`],
    ['an unknown declaration', `${VOICE}grammar x;\n$a = x;`],
    ['a declaration without semicolon', '#ABNF 1.0;\nlanguage en\n$a = x;'],
    ['a declaration after a rule', `${VOICE}$a = x; root $a;`],
    ['a meta without "is"', `${VOICE}meta "a" "b";\n$a = x;`],
    ['a meta without quotes', `${VOICE}meta a is b;\n$a = x;`],
    ['a lexicon without brackets', `${VOICE}lexicon x.pls;\n$a = x;`],
  ])('refuses %s', (_, text) => expect(refused(text).length).toBeGreaterThan(0));

  it('reads every declaration, in any order, with comments between', () => {
    const document = readAbnf(
      [
        '#ABNF 1.0 UTF-8;',
        'meta \'author\' is "a; b"; // one',
        'http-equiv "Expires" is \'0\'; /* two; */',
        'lexicon <http://www.example.com/a.pls>; lexicon <b.pls>~<application/pls+xml>;',
        'root $a; tag-format <semantics/1.0>;',
        'base <./sub/>; mode voice;',
        '{var x = 1};',
        '{!{var y = {a: 1};}!};',
        'language/**/en-GB ;',
        'public$a=x;//end',
      ].join('\n'),
      'all.gram',
    );
    expect(document).toMatchObject({
      language: 'en-GB',
      mode: 'voice',
      base: './sub/',
      tagFormat: 'semantics/1.0',
      lexicons: ['http://www.example.com/a.pls', 'b.pls'],
      metas: [
        { kind: 'meta', name: 'author', content: 'a; b' },
        { kind: 'http-equiv', name: 'Expires', content: '0' },
      ],
    });
    expect(document.tags.map((tag) => tag.text)).toEqual(['var x = 1', 'var y = {a: 1};']);
  });

  it('takes LF, CRLF and CR as line ends', () => {
    for (const end of ['\n', '\r\n', '\r']) {
      const text = ['#ABNF 1.0;', 'language en;', '// note', 'root $a;', '$a = x', 'y;'].join(end);
      expect(parseGrammarText(text).parse(['x', 'y'])).toHaveLength(1);
      expect(refused(text.replace('y;', 'y +;'))[0]).toMatchObject({ line: 6, column: 3 });
    }
  });
});

describe('tokens (section 2.1)', () => {
  it('makes one token of quoted words, spaces collapsed, and hears it as its words', () => {
    expect(accepts('public $a = go to "  New\n  York ";', 'go to new york')).toBe(true);
    expect(accepts('public $a = "a;b{c}" d;', 'a;b{c} d')).toBe(true);
  });
  it('minds neither capitals nor how accents are composed', () => {
    expect(accepts('public $a = Crème;', 'cre\u0300me'.normalize('NFD'))).toBe(true);
    expect(accepts('public $a = MILK;', 'Milk')).toBe(true);
  });
  it('takes keywords as tokens, and names apart by capitals', () => {
    expect(
      accepts(
        'public $language = root mode language public tag-format $Root; $Root = base; $root = x;',
        'root mode language public tag-format base',
      ),
    ).toBe(true);
  });
  it('takes an apostrophe inside a word', () => {
    expect(accepts("public $a = don't o'clock;", "don't o'clock")).toBe(true);
    expect(refused(`${VOICE}$a = 'new york';`)).toHaveLength(1);
  });
  it.each(['*', '+', '?', '#', '%', '=', '~', '\\', '&', ',', '^', '@'])(
    'refuses %s outside quotes',
    (char) => {
      expect(refused(`${VOICE}public $a = x ${char} y;`)).toHaveLength(1);
      expect(accepts(`public $a = x "${char}" y;`, `x ${char} y`)).toBe(true);
    },
  );
  it('refuses an empty or unclosed quoted token', () => {
    expect(refused(`${VOICE}$a = "";`)).toHaveLength(1);
    expect(refused(`${VOICE}$a = "x;\n`)[0]).toMatchObject({ line: 3, column: 6 });
  });
});

describe('expansions (sections 2.2 to 2.8)', () => {
  it.each([
    ['an empty rule', '$a = ;'],
    ['an empty alternative', '$a = x | ;'],
    ['an empty group in square brackets', '$a = [];'],
    ['a lone bar', '$a = | x;'],
    ['a weight alone', '$a = /2/;'],
    ['a weight that is no number', '$a = /x/ b;'],
    ['a negative weight', '$a = /-1/ b;'],
    ['a weight with an exponent', '$a = /1e2/ b;'],
    ['a weight in the middle', '$a = b /2/ c;'],
    ['an unclosed group', '$a = (x;'],
    ['a group closed twice', '$a = (x));'],
    ['groups that cross', '$a = (x [y)];'],
    ['a repeat of nothing', '$a = <2> x;'],
    ['two repeats', '$a = x<2><3>;'],
    ['a repeat that counts down', '$a = x<3-2>;'],
    ['a repeat without lower bound', '$a = x<-2>;'],
    ['a repeat with a word', '$a = x<two>;'],
    ['a probability over 1', '$a = x<0-1 /1.5/>;'],
    ['an unclosed repeat', '$a = x<2;'],
    ['a rule named like a special one', '$NULL = x;'],
    ['two rules of one name', '$a = x; $a = y;'],
    ['a name with a dot', '$a.b = x;'],
    ['a name with a hyphen', '$a-b = x;'],
    ['a name with a colon', '$a:b = x;'],
    ['a name that begins with a digit', '$1 = x;'],
    ['a reference to a rule that is not there', '$a = $b;'],
    ['an unclosed tag', '$a = x {tag;'],
    ['a tag with a brace', '$a = x {a}b};'],
    ['a long tag ended early', '$a = x {!{ a }!} b }!};'],
    ['an unclosed comment', '$a = x; /* no end'],
    ['no semicolon at the end', '$a = x'],
    ['an unknown scope', 'protected $a = x;'],
    ['a language that is no code', '$a = x!_;'],
    ['a language on a tag', '$a = {t}!en;'],
  ])('refuses %s', (_, rules) => expect(refused(VOICE + rules).length).toBeGreaterThan(0));

  it.each([
    ['weights in all forms', '$a = /10/ x | /2./ y | /.5/ z | /1.5/ v | w;', 'z'],
    ['empty brackets', '$a = () x ();', 'x'],
    ['nothing', '$a = $NULL;', ''],
    ['a tag alone', '$a = {t};', ''],
    ['n times', '$a = x<3>;', 'x x x'],
    ['no times', '$a = x<0> $VOID<0> $GARBAGE<0> {t}<0> y;', 'y'],
    ['void at most once', '$a = $VOID<0-1> y;', 'y'],
    ['m or more', '$a = x <2->;', 'x x x x x'],
    ['a space before a repeat', '$a = foo <2>bar;', 'foo foo bar'],
    ['a repeat with probability', '$a = [very]<0-1> x<2-3 /.8/>;', 'very x x'],
    ['a repeat of the last element only', '$a = repeat this<2>;', 'repeat this this'],
    ['sequence before alternative', '$a = new york | amsterdam;', 'new york'],
    ['nothing, endlessly', '$a = $NULL<0-> ($NULL<1->)<0-> x;', 'x'],
    [
      'languages',
      '$a = oui!fr-CA (bien sur)!fr ["s\'il" te plait]!fr $b!en <2>; $b = x;',
      'oui bien sur x x',
    ],
    ['braces in tags', '$a = {a { b} x {!{ } { }} }!};', 'x'],
    ['slashes in tags', '$a = x {http://a /* b} y;', 'x y'],
    ['comments anywhere', '$a /*1*/ = /*2*/ x /* "3 */ | // 4 ;\n y /**/;', 'y'],
    ['names of any letters', '$éè_1 = x; public $a = $éè_1;', 'x'],
  ])('reads %s', (_, rules, text) => expect(accepts(rules.replace(/^\$a/u, 'public $a'), text)).toBe(true));

  it('repeats a lone tag once', () => {
    const grammar = parseGrammarText(
      '#ABNF 1.0;\nlanguage en;\ntag-format <semantics/1.0>;\npublic $a = {out = ""} x {out += "t"}<5>;',
    );
    expect(grammar.parse(['x'])[0]!.value).toBe('t');
  });
});

describe('mistakes', () => {
  it('are all told at once, each with its place and how to mend it', () => {
    const problems = refused(`${VOICE}$a = x*;\n$b = (y;\n  $c = ;\n$d = $e | $A;\n`);
    expect(problems.map(({ line, column }) => [line, column])).toEqual([[3, 7], [4, 8], [5, 8]]); // prettier-ignore
    for (const problem of problems) expect(problem.expected ?? problem.hint).toBeTruthy();
    expect(refused(`${VOICE}$a = x;\n$d = $e | $A;\n`)).toMatchObject([
      { line: 4, column: 6, message: 'There is no rule $e in this file.' },
      { line: 4, column: 11, hint: 'Did you mean $a? Names mind capitals.' },
    ]);
  });

  it('that nest without end are refused, not followed', () => {
    expect(refused(`${VOICE}$a = ${'('.repeat(100_000)}x${')'.repeat(100_000)};`)).toHaveLength(1);
    expect(refused(`${VOICE}$a = x<100000>;`)).toHaveLength(1);
  });
});

describe('documentation comments (section 3.3)', () => {
  it('give a rule its examples', () => {
    const rule = readAbnf(
      `${VOICE}/** To greet.\n * @example hello\n * @example   hi   "there you"\n * @example\n */\n/* more */\npublic $a = hello;`,
      'x',
    ).rules.get('a')!;
    expect(rule.about).toBe('To greet.');
    expect(rule.examples.map((example) => example.text)).toEqual(['hello', 'hi "there you"', '']);
  });
});

describe('touch-tone grammars (appendix E)', () => {
  const dtmf = (rules: string) => parseGrammarText(`#ABNF 1.0;\nmode dtmf;\nroot $a;\n${rules}`);
  it('need no language, know star and pound by name, and take keys only', () => {
    expect(dtmf('$a = 1 2 star pound A;').parse(words('1 2 * # a'))).toHaveLength(1);
    expect(dtmf('$a = "*" "#";').parse(words('star pound'))).toHaveLength(1);
    expect(refused('#ABNF 1.0;\nmode dtmf;\n$a = 1 seven;')).toMatchObject([{ line: 3, column: 8 }]);
    expect(refused('#ABNF 1.0;\nmode dtmf;\n$a = *;')).toHaveLength(1);
  });
});

describe('files', () => {
  let dir: string;
  const put = (name: string, content: string | Buffer): string => {
    const path = join(dir, name);
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, content);
    return path;
  };
  const load = (name: string) => loadGrammar(join(dir, name), { roots: [dir] });
  const problems = (name: string) => problemsOf(() => load(name));
  beforeEach(() => {
    dir = mkdtempSync(join(tmpdir(), 'grammar-'));
  });
  afterEach(() => rmSync(dir, { recursive: true }));

  describe('encodings (section 4.4)', () => {
    const text = (name: string): string => `#ABNF 1.0${name};\nlanguage fr;\nroot $a;\n$a = pâté;\n`;
    it.each([
      ['UTF-8 without a name', Buffer.from(text(''))],
      ['UTF-8 with a mark', Buffer.from(`\ufeff${text('')}`)],
      ['UTF-16, little end first, with a mark', Buffer.from(`\ufeff${text(' UTF-16')}`, 'utf16le')],
      ['UTF-16, big end first, with a mark', Buffer.from(`\ufeff${text(' UTF-16')}`, 'utf16le').swap16()],
      ['UTF-16 without a mark', Buffer.from(text(' UTF-16'), 'utf16le')],
      ['UTF-16BE by name', Buffer.from(text(' UTF-16BE'), 'utf16le').swap16()],
      ['ISO-8859-1', Buffer.from(text(' ISO-8859-1'), 'latin1')],
      ['windows-1252', Buffer.from(text(' windows-1252'), 'latin1')],
      ['Latin 1 without a name', Buffer.from(text(''), 'latin1')],
    ])('reads %s', (_, bytes) => {
      put('a.gram', bytes);
      expect(load('a.gram').parse(['pâté'])).toHaveLength(1);
    });
    it('reads Japanese and Korean encodings', () => {
      put(
        'j.gram',
        Buffer.concat([
          Buffer.from('#ABNF 1.0 Shift_JIS;\nlanguage ja;\nroot $a;\n$a = '),
          Buffer.from([0x82, 0xcd, 0x82, 0xa2]),
          Buffer.from(';'),
        ]),
      );
      expect(load('j.gram').parse(['はい'])).toHaveLength(1);
      put(
        'k.gram',
        Buffer.concat([
          Buffer.from('#ABNF 1.0 EUC-KR;\nlanguage ko;\nroot $a;\n$a = '),
          Buffer.from([0xbf, 0xb9]),
          Buffer.from(';'),
        ]),
      );
      expect(load('k.gram').parse(['예'])).toHaveLength(1);
    });
    it.each([
      ['an unknown encoding', Buffer.from(text(' KLINGON'))],
      ['UTF-16 in name only', Buffer.from(text(' UTF-16'))],
      ['broken UTF-8', Buffer.concat([Buffer.from(text(' UTF-8')), Buffer.from([0xff])])],
    ])('refuses %s', (_, bytes) => {
      put('a.gram', bytes);
      expect(problems('a.gram')[0]).toMatchObject({ line: 1 });
    });
  });

  describe('references (section 2.2.2)', () => {
    it('reach public rules and roots of other files, each read once, in a circle if need be', () => {
      put(
        'main.gram',
        `${VOICE}root $a;\n$a = $<sub/b.gram#b> $<sub/b.gram>~<application/srgs> $<#own>; public $own = own;`,
      );
      put('sub/b.gram', `${VOICE}root $hidden;\npublic $b = b | bb $<../main.gram>; $hidden = h;`);
      const grammar = openGrammarFile(join(dir, 'main.gram'), { roots: [dir] });
      expect(grammar.parse(words('b h own'))).toHaveLength(1);
      expect(grammar.parse(words('bb b h own h own'))).toHaveLength(1);
      expect(grammar.library.documents).toHaveLength(2);
    });

    it('start at the declared base; base goes before a meta of that name (section 4.9)', () => {
      put('x/b.gram', `${VOICE}root $b;\n$b = b;`);
      put(
        'one.gram',
        `${VOICE}base <./x/>;\nmeta "base" is "http://www.example.com/y/";\nroot $a;\n$a = $<b.gram>;`,
      );
      put('two.gram', `${VOICE}meta "base" is "./x/";\nroot $a;\n$a = $<b.gram>;`);
      expect(load('one.gram').parse(['b'])).toHaveLength(1);
      expect(load('two.gram').parse(['b'])).toHaveLength(1);
    });

    it.each([
      ['a file that is not there', '$<none.gram>'],
      ['a rule that is not there', '$<b.gram#none>'],
      ['a private rule', '$<b.gram#secret>'],
      ['a file without root', '$<rootless.gram>'],
      ['a file of the other mode', '$<dtmf.gram>'],
      ['a file of another form than said', '$<b.gram>~<application/srgs+xml>'],
      ['an unknown media type', '$<b.gram>~<text/plain>'],
      ['a broken file', '$<broken.gram#x>'],
      ['a network', '$<http://www.example.com/b.gram>'],
      ['a file outside the folder', '$<../../../../../../../../etc/hostname>'],
      ['an absolute file outside', '$</etc/hostname>'],
      ['a file URI outside', '$<file:///etc/hostname>'],
      ['a link that leads outside', '$<link.gram>'],
    ])('refuse %s', (_, reference) => {
      put('b.gram', `${VOICE}root $b;\n$b = b; private $secret = s;`);
      put('rootless.gram', `${VOICE}public $b = b;`);
      put('dtmf.gram', '#ABNF 1.0;\nmode dtmf;\nroot $a;\n$a = 1;');
      put('broken.gram', `${VOICE}public $x = (;`);
      symlinkSync('/etc/hostname', join(dir, 'link.gram'));
      put('main.gram', `${VOICE}root $a;\n$a = ${reference};`);
      const found = problems('main.gram');
      expect(found[found.length - 1]).toMatchObject({ line: 4, column: 6 });
    });

    it('refuse host rules that are not among those allowed', () => {
      put('main.gram', `${VOICE}root $a;\n$a = $<builtin:grammar/none>;`);
      expect(
        problemsOf(() => loadGrammar(join(dir, 'main.gram'), { roots: [dir], dynamic: ['kitchen:item'] })),
      ).toHaveLength(1);
      expect(load('main.gram').parse(['x'])).toHaveLength(0);
    });
  });

  describe('the XML form (section 1.3)', () => {
    const xml = (rules: string, attributes = 'root="a"'): string =>
      `<?xml version="1.0"?>\n<!DOCTYPE grammar PUBLIC "-//W3C//DTD GRAMMAR 1.0//EN" "http://www.w3.org/TR/speech-grammar/grammar.dtd">\n<!-- note -->\n<grammar xmlns="http://www.w3.org/2001/06/grammar" version="1.0" xml:lang="en" ${attributes}>${rules}</grammar>`;

    it('is read, refers to ABNF and is referred to', () => {
      put('b.gram', `${VOICE}root $b;\n$b = b;`);
      put(
        'a.grxml',
        xml(`<meta name="x" content="y"/><lexicon uri="l.pls"/>
          <rule id="a" scope="public"><example>go b two two</example>
            go <ruleref uri="b.gram"/> <item repeat="0-1">please</item> <token>New  York</token>
            <one-of><item weight="2">one <tag>out = 1</tag></item><item repeat="2"><ruleref uri="#two"/></item></one-of>
            "San Francisco" <ruleref special="NULL"/></rule>
          <rule id="two">two</rule>`),
      );
      put('main.gram', `${VOICE}root $m;\n$m = well $<a.grxml#a>~<application/srgs+xml>;`);
      expect(load('main.gram').parse(words('well go b please new york two two san francisco'))).toHaveLength(
        1,
      );
      expect(load('main.gram').parse(words('well go b new york one san francisco'))).toHaveLength(1);
      expect(load('a.grxml').parse(words('go b new york two san francisco'))).toHaveLength(0);
    });

    it.each([
      ['unclosed elements', '<grammar version="1.0" xml:lang="en"><rule id="a">'],
      ['no version', '<grammar xml:lang="en"><rule id="a">x</rule></grammar>'],
      ['no language', '<grammar version="1.0"><rule id="a">x</rule></grammar>'],
      ['an undefined root', xml('<rule id="b">x</rule>')],
      ['an empty rule', xml('<rule id="a"></rule>')],
      ['a rule twice', xml('<rule id="a">x</rule><rule id="a">x</rule>')],
      ['a special name', xml('<rule id="a">x</rule><rule id="VOID">x</rule>')],
      ['a foreign element', xml('<rule id="a"><b>x</b></rule>')],
      ['an alternative that is no item', xml('<rule id="a"><one-of>x<token>y</token></one-of></rule>')],
      ['a bad repeat', xml('<rule id="a"><item repeat="3-1">x</item></rule>')],
      ['a bad weight', xml('<rule id="a"><one-of><item weight="-1">x</item></one-of></rule>')],
      ['both uri and special', xml('<rule id="a"><ruleref uri="#a" special="NULL"/></rule>')],
      ['a missing rule', xml('<rule id="a"><ruleref uri="#b"/></rule>')],
      ['text outside rules', xml('hello <rule id="a">x</rule>')],
      ['another vocabulary', '<html/>'],
    ])('refuses %s', (_, text) => {
      put('a.grxml', text);
      expect(problems('a.grxml').length).toBeGreaterThan(0);
    });
  });
});
