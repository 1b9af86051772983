/**
 * The script of `tag-format <semantics/1.0>`: a documented, safe subset of the ECMAScript that
 * Semantic Interpretation for Speech Recognition 1.0 uses.
 *
 * Tags are parsed when the grammar is read and run by the small interpreter below; nothing is ever handed to
 * the host's own script engine. There are no loops, functions or host objects. Values are never changed in
 * place: assigning to `out.a.b` makes new objects along the path, so a value from another rule or from a host's
 * index cannot be damaged, and no value can contain itself.
 *
 * Statements: `out = …`, `out.a.b = …`, `out["a"] = …`, `out.list[0] = …`, the operators `+=`, `-=`,
 * `out.list.push(…)`, `var x = …`, `if (…) … else …`, blocks. Expressions: strings, numbers, true, false, null,
 * undefined, objects, arrays, `rules.x.y`, `rules.latest()`, `meta.x.text`, `meta.current().text`,
 * `meta.latest().text`, `?:`, `||`, `&&`, `!`, comparison, arithmetic, `typeof`, `.length`, `.concat(…)`,
 * `.slice(…)`, `.indexOf(…)`, `.join(…)`, `.toLowerCase()`, `.toUpperCase()`, `.trim()`, `new Object()`, `new Array()`, `parseInt(…)`,
 * `parseFloat(…)`, `Number(…)`, `String(…)`.
 *
 * Reading a property of `undefined` gives `undefined` instead of an error, so that `rules.x.y` can be asked of
 * an optional part that was not spoken; assigning `undefined` removes the property.
 */

/** What a script computes with: semantic values and `undefined`. */
export type ScriptValue =
  | string
  | number
  | boolean
  | null
  | undefined
  | readonly ScriptValue[]
  | { readonly [key: string]: ScriptValue };

/** What a script can see while it runs. Rule and text are looked up only when asked for. */
export interface ScriptScope {
  out: ScriptValue;
  readonly variables: Map<string, ScriptValue>;
  rule(name: string): ScriptValue;
  latestRule(): ScriptValue;
  /** Text and score of what a rule matched; `null` name is the rule now being evaluated. */
  textOf(name: string | null): ScriptValue;
  latestText(): ScriptValue;
  scoreOf(name: string | null): ScriptValue;
}

export type Script = (scope: ScriptScope) => void;

export class ScriptError extends Error {
  constructor(
    message: string,
    /** Characters into the tag. */
    readonly offset: number,
    readonly expected?: string,
  ) {
    super(message);
  }
}

type Evaluate = (scope: ScriptScope) => ScriptValue;

const MAX_TEXT = 100_000;
const MAX_LIST = 10_000;
const MAX_DEPTH = 100;
const FORBIDDEN = new Set(['__proto__', 'constructor', 'prototype']);

type Lexeme =
  | { kind: 'name'; text: string; at: number; newline: boolean }
  | { kind: 'string'; text: string; at: number; newline: boolean }
  | { kind: 'number'; value: number; at: number; newline: boolean }
  | { kind: 'mark'; text: string; at: number; newline: boolean }
  | { kind: 'end'; at: number; newline: boolean };

const MARKS = ['===', '!==', '==', '!=', '<=', '>=', '&&', '||', '+=', '-=', '++', '--'];
const ESCAPES: Readonly<Record<string, string>> = {
  n: '\n',
  t: '\t',
  r: '\r',
  b: '\b',
  f: '\f',
  v: '\v',
  '0': '\0',
};

const lex = (source: string): Lexeme[] => {
  const lexemes: Lexeme[] = [];
  let at = 0;
  let newline = false;
  const push = (lexeme: Lexeme): void => {
    lexemes.push(lexeme);
    newline = false;
  };
  while (at < source.length) {
    const char = source[at]!;
    if (char === '\n' || char === '\r') {
      newline = true;
      at++;
    } else if (/\s/u.test(char)) at++;
    else if (source.startsWith('//', at)) {
      while (at < source.length && source[at] !== '\n') at++;
    } else if (source.startsWith('/*', at)) {
      const end = source.indexOf('*/', at + 2);
      if (end < 0) throw new ScriptError('A comment in the tag is never closed.', at, '*/');
      at = end + 2;
    } else if (char === '"' || char === "'") {
      const start = at++;
      let text = '';
      for (;;) {
        const next = source[at];
        if (next === undefined || next === '\n')
          throw new ScriptError('A string in the tag is never closed.', start, char);
        at++;
        if (next === char) break;
        if (next !== '\\') {
          text += next;
          continue;
        }
        const escaped = source[at++] ?? '';
        const digits = escaped === 'u' ? 4 : escaped === 'x' ? 2 : 0;
        if (digits > 0) {
          const code = source.slice(at, at + digits);
          if (!/^[0-9a-fA-F]+$/u.test(code) || code.length < digits) {
            throw new ScriptError('A string escape is not complete.', at);
          }
          text += String.fromCharCode(Number.parseInt(code, 16));
          at += digits;
        } else text += ESCAPES[escaped] ?? escaped;
      }
      push({ kind: 'string', text, at: start, newline });
    } else if (/[0-9]/u.test(char) || (char === '.' && /[0-9]/u.test(source[at + 1] ?? ''))) {
      const match = /^(0[xX][0-9a-fA-F]+|[0-9]*\.?[0-9]*([eE][+-]?[0-9]+)?)/u.exec(source.slice(at))!;
      push({ kind: 'number', value: Number(match[0]), at, newline });
      at += match[0].length;
    } else if (/[\p{L}_$]/u.test(char)) {
      const match = /^[\p{L}\p{N}_$]+/u.exec(source.slice(at))!;
      push({ kind: 'name', text: match[0], at, newline });
      at += match[0].length;
    } else {
      const mark = MARKS.find((candidate) => source.startsWith(candidate, at)) ?? char;
      if (mark.length === 1 && !'{}()[];,.?:=<>+-*/%!'.includes(mark)) {
        throw new ScriptError(`"${mark}" has no meaning in a tag.`, at);
      }
      push({ kind: 'mark', text: mark, at, newline });
      at += mark.length;
    }
  }
  lexemes.push({ kind: 'end', at: source.length, newline: true });
  return lexemes;
};

const isList = (value: ScriptValue): value is readonly ScriptValue[] => Array.isArray(value);
const isRecord = (value: ScriptValue): value is { readonly [key: string]: ScriptValue } =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

export const emptyRecord = (): Record<string, ScriptValue> =>
  Object.create(null) as Record<string, ScriptValue>;

const property = (value: ScriptValue, key: ScriptValue): ScriptValue => {
  if (isList(value) || typeof value === 'string') {
    if (key === 'length') return value.length;
    const index =
      typeof key === 'number' ? key : typeof key === 'string' && /^[0-9]+$/u.test(key) ? Number(key) : -1;
    return Number.isInteger(index) && index >= 0 && index < value.length ? value[index] : undefined;
  }
  if (isRecord(value)) {
    const name = String(key);
    return Object.hasOwn(value, name) ? value[name] : undefined;
  }
  return undefined;
};

/** A copy of `value` in which what lies under `path` is `assigned`. */
const withPath = (
  value: ScriptValue,
  path: readonly ScriptValue[],
  at: number,
  assigned: ScriptValue,
): ScriptValue => {
  if (at === path.length) return assigned;
  const key = path[at];
  if (isList(value) && typeof key === 'number' && Number.isInteger(key) && key >= 0 && key <= MAX_LIST) {
    const copy = value.slice();
    while (copy.length < key) copy.push(null);
    copy[key] = withPath(copy[key], path, at + 1, assigned);
    return copy;
  }
  const name = String(key);
  const copy = emptyRecord();
  if (isRecord(value)) for (const own of Object.keys(value)) copy[own] = value[own];
  if (FORBIDDEN.has(name)) return copy;
  const inner = withPath(copy[name], path, at + 1, assigned);
  if (inner === undefined) delete copy[name];
  else copy[name] = inner;
  return copy;
};

const asText = (value: ScriptValue): string => {
  if (isList(value))
    return value.map((item) => (item === undefined || item === null ? '' : asText(item))).join(',');
  if (isRecord(value)) return '[object Object]';
  return String(value);
};
const asNumber = (value: ScriptValue): number =>
  isList(value) || isRecord(value) ? Number.NaN : value === undefined ? Number.NaN : Number(value);
const limited = (text: string): string => (text.length > MAX_TEXT ? text.slice(0, MAX_TEXT) : text);

const plus = (left: ScriptValue, right: ScriptValue): ScriptValue => {
  const asWords = (value: ScriptValue): boolean =>
    typeof value === 'string' || (typeof value === 'object' && value !== null);
  return asWords(left) || asWords(right)
    ? limited(asText(left) + asText(right))
    : asNumber(left) + asNumber(right);
};

const loosely = (left: ScriptValue, right: ScriptValue): boolean => {
  const none = (value: ScriptValue): boolean => value === null || value === undefined;
  if (none(left) || none(right)) return none(left) && none(right);
  if (typeof left === typeof right || typeof left === 'object' || typeof right === 'object')
    return left === right;
  return asNumber(left) === asNumber(right);
};

const compare = (mark: string, left: ScriptValue, right: ScriptValue): boolean => {
  const [a, b] =
    typeof left === 'string' && typeof right === 'string' ? [left, right] : [asNumber(left), asNumber(right)];
  return mark === '<' ? a < b : mark === '>' ? a > b : mark === '<=' ? a <= b : a >= b;
};

const METHODS: Readonly<Record<string, (self: ScriptValue, given: readonly ScriptValue[]) => ScriptValue>> =
  Object.assign(Object.create(null) as Record<string, never>, {
    concat: (self: ScriptValue, given: readonly ScriptValue[]): ScriptValue => {
      if (typeof self === 'string') return limited(self + given.map(asText).join(''));
      const joined = isList(self) ? self.slice() : [];
      for (const value of given) {
        if (isList(value)) joined.push(...value);
        else if (value !== undefined) joined.push(value);
      }
      return joined.slice(0, MAX_LIST);
    },
    slice: (self: ScriptValue, [from, to]: readonly ScriptValue[]): ScriptValue => {
      const start = from === undefined ? 0 : asNumber(from);
      const end = to === undefined ? undefined : asNumber(to);
      return isList(self) || typeof self === 'string' ? self.slice(start, end) : undefined;
    },
    indexOf: (self: ScriptValue, [wanted]: readonly ScriptValue[]): ScriptValue =>
      typeof self === 'string' ? self.indexOf(asText(wanted)) : isList(self) ? self.indexOf(wanted) : -1,
    join: (self: ScriptValue, [between]: readonly ScriptValue[]): ScriptValue =>
      isList(self)
        ? limited(self.map(asText).join(between === undefined ? ',' : asText(between)))
        : undefined,
    toLowerCase: (self: ScriptValue): ScriptValue =>
      typeof self === 'string' ? self.toLowerCase() : undefined,
    toUpperCase: (self: ScriptValue): ScriptValue =>
      typeof self === 'string' ? self.toUpperCase() : undefined,
    trim: (self: ScriptValue): ScriptValue => (typeof self === 'string' ? self.trim() : undefined),
    toString: (self: ScriptValue): ScriptValue => (self === undefined ? undefined : asText(self)),
  });

const FUNCTIONS: Readonly<Record<string, (given: readonly ScriptValue[]) => ScriptValue>> = Object.assign(
  Object.create(null) as Record<string, never>,
  {
    parseInt: ([text, radix]: readonly ScriptValue[]) =>
      Number.parseInt(asText(text), radix === undefined ? 10 : asNumber(radix)),
    parseFloat: ([text]: readonly ScriptValue[]) => Number.parseFloat(asText(text)),
    Number: ([value]: readonly ScriptValue[]) => asNumber(value),
    String: ([value]: readonly ScriptValue[]) => asText(value),
  },
);

const BINARY: readonly (readonly string[])[] = [
  ['||'],
  ['&&'],
  ['==', '!=', '===', '!=='],
  ['<', '>', '<=', '>='],
  ['+', '-'],
  ['*', '/', '%'],
];

const KEYWORDS = new Set([
  'for', 'while', 'do', 'function', 'this', 'try', 'throw', 'switch', 'with', 'delete', 'in', 'instanceof',
  'class', 'import', 'return', 'yield', 'await', 'void', 'case', 'catch', 'break', 'continue',
]); // prettier-ignore

/** Compiles one tag. Throws `ScriptError` for anything outside the subset. */
export const compileScript = (source: string): Script => {
  const lexemes = lex(source);
  let next = 0;
  let depth = 0;

  const peek = (): Lexeme => lexemes[next]!;
  const isMark = (text: string): boolean => {
    const lexeme = peek();
    return lexeme.kind === 'mark' && lexeme.text === text;
  };
  const isName = (text: string): boolean => {
    const lexeme = peek();
    return lexeme.kind === 'name' && lexeme.text === text;
  };
  const takeMark = (text: string): boolean => {
    if (!isMark(text)) return false;
    next++;
    return true;
  };
  const show = (lexeme: Lexeme): string =>
    lexeme.kind === 'end'
      ? 'the end of the tag'
      : lexeme.kind === 'number'
        ? String(lexeme.value)
        : `"${lexeme.text}"`;
  const fail = (expected: string): never => {
    const lexeme = peek();
    throw new ScriptError(`Found ${show(lexeme)} in a tag.`, lexeme.at, expected);
  };
  const needMark = (text: string): void => {
    if (!takeMark(text)) fail(`"${text}"`);
  };
  const name = (): string => {
    const lexeme = peek();
    if (lexeme.kind !== 'name') return fail('a name');
    if (FORBIDDEN.has(lexeme.text))
      throw new ScriptError(`The name ${lexeme.text} is not allowed.`, lexeme.at);
    next++;
    return lexeme.text;
  };
  const deeper = <T>(inner: () => T): T => {
    if (++depth > MAX_DEPTH) throw new ScriptError('The tag is nested too deep.', peek().at);
    const result = inner();
    depth--;
    return result;
  };

  const given = (): Evaluate[] => {
    const list: Evaluate[] = [];
    if (takeMark(')')) return list;
    do list.push(expression());
    while (takeMark(','));
    needMark(')');
    return list;
  };

  const primary = (): Evaluate => {
    const lexeme = peek();
    if (lexeme.kind === 'string') {
      next++;
      const text = lexeme.text;
      return () => text;
    }
    if (lexeme.kind === 'number') {
      next++;
      const value = lexeme.value;
      return () => value;
    }
    if (takeMark('(')) {
      const inner = expression();
      needMark(')');
      return inner;
    }
    if (takeMark('[')) {
      const elements: Evaluate[] = [];
      while (!takeMark(']')) {
        elements.push(expression());
        if (!isMark(']')) needMark(',');
      }
      return (scope) => elements.map((element) => element(scope)).filter((value) => value !== undefined);
    }
    if (takeMark('{')) {
      const members: { key: string; value: Evaluate }[] = [];
      while (!takeMark('}')) {
        const keyLexeme = peek();
        let key: string;
        if (keyLexeme.kind === 'string') {
          key = keyLexeme.text;
          if (FORBIDDEN.has(key)) throw new ScriptError(`The name ${key} is not allowed.`, keyLexeme.at);
          next++;
        } else if (keyLexeme.kind === 'number') {
          key = String(keyLexeme.value);
          next++;
        } else key = name();
        needMark(':');
        members.push({ key, value: expression() });
        if (!isMark('}')) needMark(',');
      }
      return (scope) => {
        const record = emptyRecord();
        for (const member of members) {
          const value = member.value(scope);
          if (value !== undefined) record[member.key] = value;
        }
        return record;
      };
    }
    if (lexeme.kind !== 'name') return fail('a value');
    if (KEYWORDS.has(lexeme.text)) {
      throw new ScriptError(`"${lexeme.text}" is not in the safe part of the script language.`, lexeme.at);
    }
    const word = name();
    switch (word) {
      case 'true':
        return () => true;
      case 'false':
        return () => false;
      case 'null':
        return () => null;
      case 'undefined':
        return () => undefined;
      case 'new': {
        // `new Object()` and `new Array` are how the specification's own examples begin.
        const made = name();
        if (made !== 'Object' && made !== 'Array') {
          throw new ScriptError(`new ${made} is not in the safe part of the script language.`, lexeme.at);
        }
        if (takeMark('(')) needMark(')');
        return made === 'Object' ? emptyRecord : () => [];
      }
      case 'out':
        return (scope) => scope.out;
      case 'rules':
        return rulesAccess();
      case 'meta':
        return metaAccess();
      default: {
        const known = FUNCTIONS[word];
        if (known !== undefined && takeMark('(')) {
          const list = given();
          return (scope) => known(list.map((one) => one(scope)));
        }
        return (scope) => scope.variables.get(word);
      }
    }
  };

  /** `rules.latest()`, `rules.x` or `rules["x"]`. */
  const rulesAccess = (): Evaluate => {
    if (takeMark('[')) {
      const key = expression();
      needMark(']');
      return (scope) => scope.rule(asText(key(scope)));
    }
    if (!isMark('.')) return fail('"." after rules');
    next++;
    const rule = name();
    if (rule === 'latest' && takeMark('(')) {
      needMark(')');
      return (scope) => scope.latestRule();
    }
    return (scope) => scope.rule(rule);
  };

  /** `meta.current()`, `meta.latest()`, `meta.x`, each with `.text` or `.score`. */
  const metaAccess = (): Evaluate => {
    needMark('.');
    const rule = name();
    let read: (what: 'text' | 'score') => Evaluate;
    if (takeMark('(')) {
      needMark(')');
      if (rule === 'latest') {
        read = (what) => (scope) => (what === 'text' ? scope.latestText() : scope.scoreOf(''));
      } else if (rule === 'current') {
        read = (what) => (scope) => (what === 'text' ? scope.textOf(null) : scope.scoreOf(null));
      } else return fail('meta.current() or meta.latest()');
    } else read = (what) => (scope) => (what === 'text' ? scope.textOf(rule) : scope.scoreOf(rule));
    if (!isMark('.')) {
      return (scope) => {
        const record = emptyRecord();
        const text = read('text')(scope);
        if (text === undefined) return undefined;
        record['text'] = text;
        record['score'] = read('score')(scope);
        return record;
      };
    }
    next++;
    const member = name();
    if (member === 'text' || member === 'score') return read(member);
    return () => undefined;
  };

  const postfix = (): Evaluate => {
    let value = primary();
    for (;;) {
      if (takeMark('.')) {
        const member = name();
        const inner = value;
        if (takeMark('(')) {
          const list = given();
          const method = METHODS[member];
          if (method === undefined) {
            throw new ScriptError(`.${member}() is not in the safe part of the script language.`, peek().at);
          }
          value = (scope) => {
            const self = inner(scope);
            return method(
              self,
              list.map((one) => one(scope)),
            );
          };
        } else value = (scope) => property(inner(scope), member);
      } else if (takeMark('[')) {
        const key = expression();
        needMark(']');
        const inner = value;
        value = (scope) => property(inner(scope), key(scope));
      } else return value;
    }
  };

  const unary = (): Evaluate => {
    if (takeMark('!')) {
      const inner = deeper(unary);
      return (scope) => !inner(scope);
    }
    if (takeMark('-')) {
      const inner = deeper(unary);
      return (scope) => -asNumber(inner(scope));
    }
    if (takeMark('+')) {
      const inner = deeper(unary);
      return (scope) => asNumber(inner(scope));
    }
    if (isName('typeof')) {
      next++;
      const inner = deeper(unary);
      return (scope) => {
        const value = inner(scope);
        return value === null ? 'object' : typeof value;
      };
    }
    return postfix();
  };

  const binary = (level: number): Evaluate => {
    if (level === BINARY.length) return unary();
    let left = binary(level + 1);
    for (;;) {
      const lexeme = peek();
      if (lexeme.kind !== 'mark' || !BINARY[level]!.includes(lexeme.text)) return left;
      next++;
      left = operate(lexeme.text, left, binary(level + 1));
    }
  };

  const expression = (): Evaluate =>
    deeper(() => {
      const condition = binary(0);
      if (!takeMark('?')) return condition;
      const yes = expression();
      needMark(':');
      const no = expression();
      return (scope) => (condition(scope) ? yes(scope) : no(scope));
    });

  const block = (): Script => {
    if (!takeMark('{')) return statement();
    const list: Script[] = [];
    while (!takeMark('}')) {
      if (peek().kind === 'end') fail('"}"');
      if (takeMark(';')) continue;
      list.push(statement());
    }
    return (scope) => {
      for (const one of list) one(scope);
    };
  };

  const statement = (): Script => deeper(simpleStatement);

  const simpleStatement = (): Script => {
    if (isName('if')) {
      next++;
      needMark('(');
      const condition = expression();
      needMark(')');
      const yes = block();
      takeMark(';');
      let no: Script | null = null;
      if (isName('else')) {
        next++;
        no = block();
      }
      return (scope) => {
        if (condition(scope)) yes(scope);
        else no?.(scope);
      };
    }
    if (isName('var') || isName('let') || isName('const')) {
      next++;
      const variable = name();
      const value = takeMark('=') ? expression() : () => undefined;
      return (scope) => void scope.variables.set(variable, value(scope));
    }
    const start = next;
    const assignment = assignable();
    if (assignment !== null) return assignment;
    next = start;
    const value = expression();
    return (scope) => void value(scope);
  };

  /** `out… =`, `x… =`, `… +=`, `….push(…)`; null when the statement is something else. */
  const assignable = (): Script | null => {
    const lexeme = peek();
    if (
      lexeme.kind !== 'name' ||
      lexeme.text === 'rules' ||
      lexeme.text === 'meta' ||
      KEYWORDS.has(lexeme.text)
    )
      return null;
    const variable = name();
    const path: Evaluate[] = [];
    for (;;) {
      if (takeMark('.')) {
        const member = name();
        if (member === 'push' && takeMark('(')) {
          const list = given();
          return assign(variable, path, (scope, old) => {
            const values = list.map((one) => one(scope)).filter((value) => value !== undefined);
            return (isList(old) ? [...old, ...values] : values).slice(0, MAX_LIST);
          });
        }
        if (isMark('(')) return null;
        path.push(() => member);
      } else if (takeMark('[')) {
        path.push(expression());
        needMark(']');
      } else break;
    }
    if (takeMark('=')) {
      // `a = b = 1` assigns right to left, as in ECMAScript.
      const start = next;
      const inner = assignable();
      if (inner !== null) {
        const end = next;
        next = start;
        const read = postfix();
        next = end;
        const outer = assign(variable, path, (scope) => read(scope));
        return (scope) => {
          inner(scope);
          outer(scope);
        };
      }
      next = start;
      const value = expression();
      return assign(variable, path, (scope) => value(scope));
    }
    const mark = takeMark('+=') ? '+' : takeMark('-=') ? '-' : null;
    if (mark === null) return null;
    const value = expression();
    return assign(variable, path, (scope, old) =>
      mark === '+' ? plus(old, value(scope)) : asNumber(old) - asNumber(value(scope)),
    );
  };

  const statements: Script[] = [];
  while (peek().kind !== 'end') {
    if (takeMark(';')) continue;
    statements.push(statement());
    const lexeme = peek();
    const previous = lexemes[next - 1]!;
    const closed = previous.kind === 'mark' && (previous.text === '}' || previous.text === ';');
    if (lexeme.kind !== 'end' && !isMark(';') && !lexeme.newline && !closed) fail('";" between statements');
  }
  if (statements.length === 1) return statements[0]!;
  return (scope) => {
    for (const one of statements) one(scope);
  };
};

const assign =
  (
    variable: string,
    path: readonly Evaluate[],
    compute: (scope: ScriptScope, old: ScriptValue) => ScriptValue,
  ): Script =>
  (scope) => {
    const root = variable === 'out' ? scope.out : scope.variables.get(variable);
    const keys = path.map((key) => key(scope));
    let old = root;
    for (const key of keys) old = property(old, key);
    const changed = withPath(root, keys, 0, compute(scope, old));
    if (variable === 'out') scope.out = changed;
    else scope.variables.set(variable, changed);
  };

const operate = (mark: string, left: Evaluate, right: Evaluate): Evaluate => {
  switch (mark) {
    case '||':
      return (scope) => left(scope) || right(scope);
    case '&&':
      return (scope) => left(scope) && right(scope);
    case '==':
      return (scope) => loosely(left(scope), right(scope));
    case '!=':
      return (scope) => !loosely(left(scope), right(scope));
    case '===':
      return (scope) => left(scope) === right(scope);
    case '!==':
      return (scope) => left(scope) !== right(scope);
    case '+':
      return (scope) => plus(left(scope), right(scope));
    case '-':
      return (scope) => asNumber(left(scope)) - asNumber(right(scope));
    case '*':
      return (scope) => asNumber(left(scope)) * asNumber(right(scope));
    case '/':
      return (scope) => asNumber(left(scope)) / asNumber(right(scope));
    case '%':
      return (scope) => asNumber(left(scope)) % asNumber(right(scope));
    default:
      return (scope) => compare(mark, left(scope), right(scope));
  }
};
