import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cellText, fileKind, rowsOfText, tableKind, textOfFile } from '../src/index.js';

const bytes = (...list: number[]) => Uint8Array.from(list);

describe('text of a file', () => {
  it.each([
    ['UTF-8', bytes(0xc2, 0xb0, 0x43), '°C'],
    ['Windows Latin', bytes(0xb0, 0x43), '°C'],
    ['UTF-16, little end first', bytes(0xff, 0xfe, 0xb0, 0x00, 0x43, 0x00), '°C'],
    ['UTF-16, big end first', bytes(0xfe, 0xff, 0x00, 0xb0, 0x00, 0x43), '°C'],
  ])('in %s', (_, file, text) => expect(textOfFile(file).replace('\ufeff', '')).toBe(text));
  it.each([
    ['text', bytes(0x74, 0x69)],
    ['xlsx', bytes(0x50, 0x4b, 3, 4)],
    ['old spreadsheet', bytes(0xd0, 0xcf, 0x11, 0xe0)],
    ['text', bytes()],
  ] as const)('is told from %s', (kind, file) => expect(fileKind(file)).toBe(kind));
});

describe('rows of a text', () => {
  // RFC 4180, section 2: each rule by its own example.
  it.each([
    ['1: a line is a record', 'aaa,bbb\r\nzzz,yyy\r\n', [['aaa', 'bbb'], ['zzz', 'yyy']]],
    ['2: the last line need not end', 'aaa,bbb\r\nzzz,yyy', [['aaa', 'bbb'], ['zzz', 'yyy']]],
    ['5: quotation marks around a cell', '"aaa","bbb"\r\nzzz,yyy', [['aaa', 'bbb'], ['zzz', 'yyy']]],
    ['6: a line break inside', '"aaa","b\r\nbb"\r\nzzz,yyy', [['aaa', 'b\r\nbb'], ['zzz', 'yyy']]],
    ['7: a quotation mark inside, doubled', '"aaa","b""bb"', [['aaa', 'b"bb']]],
  ] as const)('%s', (_, text, rows) => expect(rowsOfText(text, 'x.csv')).toEqual(rows)); // prettier-ignore

  it('come back from any cells, quoted or not', () => {
    const cell = fc.string({ maxLength: 8 }).map((text) => text.replaceAll(/[;\t\ufeff]/g, '').trim());
    fc.assert(
      fc.property(fc.array(fc.array(cell, { minLength: 2, maxLength: 4 }), { minLength: 1, maxLength: 6 }), (rows) => {
        const text = rows.map((row) => row.map((one) => `"${one.replaceAll('"', '""')}"`).join(',')).join('\n');
        expect(rowsOfText(text, 'x.csv')).toEqual(rows);
      }),
    );
  });

  it('take a comma for the decimal sign where semicolons part and no point stands', () => {
    expect(rowsOfText('a;b\n1,5;2\n', 'x.csv')).toEqual([['a', 'b'], ['1.5', '2']]); // prettier-ignore
    expect(rowsOfText('a;b\n1,5;2.5\n', 'x.csv')).toEqual([['a', 'b'], ['1,5', '2.5']]); // prettier-ignore
  });
  it('keep empty lines, so that a row is a line of the file', () => expect(rowsOfText('a,b\n\n1,2\n', 'x.csv')).toHaveLength(3));
  it('have no end where a quotation mark has none', () =>
    expect(() => rowsOfText('a,b\n1,"2\n3,4', 'x.csv')).toThrow('x.csv, line 2: a quotation mark is opened and never closed'));
  it('of a spreadsheet are text: dates by the clock on the wall, times of day alone', () => {
    expect(cellText(new Date(Date.UTC(2026, 2, 17, 13, 30)))).toBe('2026-03-17T13:30:00');
    expect(cellText(new Date(Date.UTC(1899, 11, 31, 13, 30)))).toBe('13:30:00');
    expect([cellText(null), cellText(1.5), cellText('x')]).toEqual(['', '1.5', 'x']);
  });
});

describe('what a table holds', () => {
  const folder = join(import.meta.dirname, '../../../examples/pellamoor/days/2026-03-17');
  const kinds: Record<string, string> = {
    'caramel_batches.csv': 'cooks',
    'flow_5min.csv': 'counts',
    'lane_weights_hourly.csv': 'lanes',
    'lot_use.csv': 'stops',
    'nougat_batches.csv': 'cooks',
    'pallets.csv': 'pallets',
    'peanut_roast.csv': 'roast',
    'stops.csv': 'stops',
    'temper.csv': 'temper',
    'tunnel.csv': 'tunnel',
  };
  it.each(readdirSync(folder).filter((name) => name.endsWith('.csv')))('%s of the demo day', (name) => {
    const rows = rowsOfText(textOfFile(readFileSync(join(folder, name))), name);
    if (kinds[name] === undefined) expect(() => tableKind(rows, name)).toThrow(/tell no log that is known here; expected are/);
    else expect(tableKind(rows, name)).toBe(kinds[name]);
  });
  it.each([
    ['viscometer', 'shear rate (1/s),shear stress (Pa)\n5,40\n'],
    ['viscometer', 'D (1/s);tau (Pa)\n5;40\n'],
    ['viscometer', 'rate 1/s\tviscosity Pa·s\n5\t8\n'],
    ['roast', 'time (min),nib bed (°C)\n0,25\n'],
    ['roast', 'time (min),drum air (°C)\n0,25\n'],
    ['roast', 'time,zone 1 air (°C),zone 2 air (°C),air velocity (m/s)\n06:00,160,162,1.3\n'],
    ['temper', 'time (s),temperature (°C)\n0,32\n'],
    ['temper', 'clock,slope (K/min),coolant (°C)\n06:00,0.1,12\n'],
    ['tunnel', 'time,zone 1 (°C),zone 2 (°C),bar exit (°C)\n06:00,15,11,18\n'],
  ])('%s: %j', (kind, text) => expect(tableKind(rowsOfText(text, 'x.csv'), 'x.csv')).toBe(kind));
  it('is empty where it is empty', () => expect(() => tableKind(rowsOfText('', 'x.csv'), 'x.csv')).toThrow(/^x.csv is empty/));
});
