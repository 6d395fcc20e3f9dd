import { describe, expect, it } from 'vitest';
import { plain } from '../src/json.js';

describe('plain', () => {
  it.each([
    [1.5, 1.5],
    [NaN, null],
    [-Infinity, null],
    [
      [1, Infinity, NaN],
      [1, null, null],
    ],
    ['word', 'word'],
    [false, false],
  ])('carries %j as %j over JSON', (value, expected) => {
    expect(plain(value)).toEqual(expected);
    expect(JSON.parse(JSON.stringify(plain(value)))).toEqual(expected);
  });
});
