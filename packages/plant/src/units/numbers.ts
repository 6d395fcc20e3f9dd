/** Numbers as people write them: '1,050', '1 050', '−0.3', '1e-5'. A decimal comma is an error that asks for a point. */
export type ReadNumber =
  | { readonly ok: true; readonly value: number; readonly rest: string }
  | {
      readonly ok: false;
      readonly code: 'NOT_A_NUMBER' | 'DECIMAL_COMMA' | 'NOT_FINITE';
      readonly message: string;
      readonly advice?: string;
    };

const spaces = ' \\u00a0\\u2009\\u202f';
const start = new RegExp(`^([+\\-−]?)[${spaces}]?(\\d[\\d.,${spaces}]*|\\.\\d+)`);
const grouped = new RegExp(`^[1-9]\\d{0,2}(?:([,${spaces}])\\d{3})(?:\\1\\d{3})*(?:\\.\\d*)?$`);
const tail = new RegExp(`[.,${spaces}]+$`);
const anySpace = new RegExp(`[${spaces}]`, 'g');
const plain = /^(\d+\.?\d*|\.\d+)([eE][+-]?\d+)?$/;
const exponent = /^[eE][+\-−]?\d{1,4}(?![\d.,])/;
/** '1/4 in', '1 3/8 in': halves to sixty-fourths only, so that '98/100 g' stays a count. */
const inches = /^(?:(\d{1,3})[ -])?(\d{1,2})\/(2|4|8|16|32|64)(?=\s)/;
/** Beyond any mass, count, price or pressure of a plant. */
export const largest = 1e15;

/** Reads the number at the beginning of a text; `rest` is what follows, without leading spaces. */
export function readNumber(text: string): ReadNumber {
  const fraction = inches.exec(text);
  if (fraction) {
    const [all, whole = '0', over, under] = fraction;
    return { ok: true, value: Number(whole) + Number(over) / Number(under), rest: text.slice(all.length).trimStart() };
  }
  const found = start.exec(text);
  if (!found) return notANumber(text);
  let digits = found[2]!.replace(tail, (end) => (end.startsWith('.') ? '.' : ''));
  let rest = text.slice(found[0].length);
  if (digits.includes(',')) {
    if (!grouped.test(digits)) return decimalComma(digits);
    digits = digits.replaceAll(',', '');
  } else if (digits.search(anySpace) >= 0) {
    if (!grouped.test(digits)) return notANumber(text);
    digits = digits.replace(anySpace, '');
  }
  const power = rest.startsWith('e') || rest.startsWith('E') ? exponent.exec(rest)?.[0] : undefined;
  if (power !== undefined && digits.length === found[2]!.length) {
    digits += power.replace('−', '-');
    rest = rest.slice(power.length);
  }
  if (!plain.test(digits)) return notANumber(text);
  const size = Number(digits);
  if (!(size <= largest)) {
    return {
      ok: false,
      code: 'NOT_FINITE',
      message: `${clip(found[0] + (power ?? ''))} is too large to be a quantity`,
      advice: `Write a number up to ${largest}`,
    };
  }
  return { ok: true, value: found[1] === '' || found[1] === '+' ? size : -size, rest: rest.trimStart() };
}

function notANumber(text: string): ReadNumber {
  if (/^[+\-−.]*(nan|inf)/i.test(text)) return { ok: false, code: 'NOT_FINITE', message: `'${clip(text)}' is not a finite number` };
  return { ok: false, code: 'NOT_A_NUMBER', message: `'${clip(text)}' does not begin with a number` };
}

function decimalComma(digits: string): ReadNumber {
  const point = /^\d+,\d+$/.test(digits) ? digits.replace(',', '.') : undefined;
  return {
    ok: false,
    code: 'DECIMAL_COMMA',
    message: `${clip(digits)} has a comma that does not part thousands`,
    advice: point ? `Decimals take a point: write ${point}` : 'Decimals take a point; commas part groups of three digits: 1,050.5',
  };
}

export function clip(text: string, length = 60): string {
  return text.length > length ? `${text.slice(0, length - 1)}…` : text;
}

/**
 * A number for people: fixed decimals, thin spaces between thousands, a true minus sign.
 * @param decimals - digits after the point, 0 to 20
 * @returns '−12 345.60'; '–' for a value that is not finite ("no value")
 * @example formatNumber(-12345.6, 2) // '−12 345.60'
 */
export function formatNumber(value: number, decimals = 0): string {
  if (!Number.isFinite(value)) return '–';
  const fixed = Math.abs(value).toFixed(decimals);
  if (fixed.includes('e')) return `${value < 0 ? '−' : ''}${fixed}`;
  const [whole, part] = fixed.split('.') as [string, string?];
  const parted = whole.replace(/\B(?=(\d{3})+$)/g, '\u2009');
  const sign = value < 0 && /[1-9]/.test(fixed) ? '−' : '';
  return `${sign}${parted}${part === undefined ? '' : `.${part}`}`;
}
