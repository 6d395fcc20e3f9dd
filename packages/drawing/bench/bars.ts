import type { SectionSpec } from '../src/index.js';

/** Invented bars of different build, none of them measured. */
export const classic: SectionSpec = {
  width: 26.8,
  scale: 24,
  coat: { top: 1.41, left: 1.41, right: 1.41, bottom: 1.41, chocolate: 'milk' },
  layers: [
    { id: 'nougat', name: 'Nougat', thickness: 6.43, texture: 'nougat', air: 0.324 },
    {
      id: 'inlay',
      name: 'Caramel with peanuts',
      thickness: 7.14,
      texture: 'caramel',
      pieces: [{ kind: 'peanut', share: 0.4 }],
      voids: 0.04,
    },
  ],
};
export const heavyTop: SectionSpec = {
  ...classic,
  coat: { top: 1.93, left: 1.41, right: 1.41, bottom: 1.41, chocolate: 'milk' },
  target: { width: 26.8, height: 16.39 },
  excess: { sides: ['top'], standing: 'computed' },
};
export const lopsided: SectionSpec = {
  ...classic,
  width: 27.1,
  coat: { top: 1.2, left: 1.2, right: 2.02, bottom: 0.9, chocolate: 'milk' },
  layers: [classic.layers[0]!, { ...classic.layers[1]!, thickness: 6.6, held: true }],
  target: { width: 26.8, height: 16.39, coat: { top: 1.41, left: 1.41, right: 1.41, bottom: 1.41 }, thickness: [6.43, 7.14] },
  excess: { sides: ['right'], standing: 'measured' },
};
export const caramelBelow: SectionSpec = {
  width: 24,
  scale: 20,
  coat: { top: 1.1, left: 1, right: 1, bottom: 1.2, chocolate: 'dark' },
  layers: [
    { id: 'caramel', name: 'Soft caramel', thickness: 4.2, texture: 'caramel' },
    { id: 'almond', name: 'Nougat with almonds', thickness: 8.4, texture: 'nougat', air: 0.22, pieces: [{ kind: 'almond', share: 0.24 }] },
    { id: 'jelly', name: 'Fruit jelly', thickness: 2.4, texture: 'jelly' },
  ],
};
export const waferBar: SectionSpec = {
  width: 22,
  scale: 20,
  underside: 'open',
  coat: { top: 1.3, left: 1.2, right: 1.2, bottom: 0, chocolate: 'white' },
  layers: [
    { id: 'wafer', name: 'Filled wafer', thickness: 7.5, texture: 'wafer', sheets: 4, fillingShare: 0.5 },
    {
      id: 'hazel',
      name: 'Hazelnut paste',
      thickness: 3.2,
      texture: 'paste',
      pieces: [{ kind: 'hazelnut', share: 0.2, length: [1.6, 2.8] }],
    },
  ],
};
export const nougatOnly: SectionSpec = {
  width: 25,
  scale: 20,
  coat: { top: 1.6, left: 1.4, right: 1.4, bottom: 1.3, chocolate: 'milk' },
  layers: [{ id: 'light', name: 'Light nougat', thickness: 13, texture: 'nougat', air: 0.5 }],
};
export const biscuitBar: SectionSpec = {
  width: 20,
  scale: 20,
  coat: { top: 1.2, left: 1.1, right: 1.1, bottom: 1.1, chocolate: 'milk' },
  layers: [
    { id: 'biscuit', name: 'Biscuit', thickness: 5.5, texture: 'biscuit' },
    { id: 'caramel', name: 'Caramel', thickness: 3.4, texture: 'caramel' },
    { id: 'cap', name: 'Chocolate cap', thickness: 1.6, texture: 'dark-chocolate' },
  ],
};
export const marshmallow: SectionSpec = {
  width: 26,
  scale: 20,
  coat: { top: 0.8, left: 0.8, right: 0.8, bottom: 0.8, chocolate: 'dark' },
  layers: [
    { id: 'crisp', name: 'Crisp base', thickness: 3.6, texture: 'paste', pieces: [{ kind: 'crisp', share: 0.42 }] },
    { id: 'marsh', name: 'Marshmallow', thickness: 9, texture: 'nougat', air: 0.72 },
  ],
};
export const naked: SectionSpec = {
  width: 30,
  scale: 20,
  layers: [
    { id: 'fruit', name: 'Fruit paste with raisins', thickness: 5, texture: 'paste', pieces: [{ kind: 'raisin', share: 0.22 }] },
    {
      id: 'nuts',
      name: 'Nut slab',
      thickness: 9,
      texture: 'caramel',
      pieces: [
        { kind: 'peanut', share: 0.38 },
        { kind: 'hazelnut', share: 0.2 },
      ],
    },
  ],
};
