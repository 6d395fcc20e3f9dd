import type { Source } from '../sources.js';

/** Works behind the water models. */
export const waterSources = {
  'starzak-peacock-1997': {
    title: 'M. Starzak, S. D. Peacock: Water activity coefficient in aqueous solutions of sucrose, Zuckerindustrie 122 (1997) 380',
    address: 'https://www.cultures-sucre.com/document/activite-de-leau-dans-des-solutions-de-saccharose/',
  },
  'norrish-1966': {
    title: 'R. S. Norrish, J. Food Technol. 1 (1966) 25; constants as collected by J. Chirife, C. Ferro Fontan and co-workers',
  },
  zsr: {
    title:
      'R. H. Stokes, R. A. Robinson: Interactions in aqueous nonelectrolyte solutions, J. Phys. Chem. 70 (1966) 2126 (after Zdanovskii 1936)',
  },
  'robinson-stokes-1959': { title: 'R. A. Robinson, R. H. Stokes: Electrolyte Solutions, 2nd ed. (1959), appendix' },
  'miner-dalton-1953': {
    title: 'C. S. Miner, N. N. Dalton (eds): Glycerol (1953): relative humidity, boiling and freezing points of solutions',
  },
  'tang-1986': {
    title:
      'I. N. Tang, H. R. Munkelwitz, N. Wang: Water activity measurements with single suspended droplets, J. Colloid Interface Sci. 114 (1986) 409',
  },
  'walstra-2006': { title: 'P. Walstra, J. T. M. Wouters, T. J. Geurts: Dairy Science and Technology, 2nd ed. (2006)' },
  'iupac-atomic-weights': { title: 'IUPAC: Atomic weights of the elements' },
  'pancoast-junk-1980': { title: 'H. M. Pancoast, W. R. Junk: Handbook of Sugars, 2nd ed. (1980), saccharide composition of corn syrups' },
  'grover-1947': {
    title:
      'D. W. Grover: The keeping properties of confectionery as influenced by its water vapour pressure, J. Soc. Chem. Ind. 66 (1947) 201',
  },
  'money-born-1951': { title: 'R. W. Money, R. Born: Equilibrium humidity of sugar solutions, J. Sci. Food Agric. 2 (1951) 180' },
  'ross-1975': { title: 'K. D. Ross: Estimation of water activity in intermediate moisture foods, Food Technol. 29 (1975) 26' },
  'browne-1912': { title: 'C. A. Browne: A Handbook of Sugar Analysis (1912), boiling points of sucrose solutions' },
  'thieme-1934': { title: 'J. G. Thieme: Studies on Sugar Boiling (1934), boiling point elevation' },
  'sugar-syrup-table': { title: 'Table of boiling points of sugar syrups, solids up to 64 %' },
  'sugar-boiling-stages': { title: 'Sugar-boiling stages with temperature and concentration, as printed in confectionery guides' },
  'caramel-cooks': { title: 'Measured batch cooks of milk caramel with 28 to 62 DE glucose syrups: end temperature and moisture' },
  'fructose-syrup-pages': {
    title: 'Trade pages on fructose syrup: boiling point at 77 % solids',
    address: 'https://fastfreenews.com/Understanding-the-Boiling-Point-of-High-Fructose-Corn-Syrup',
  },
  'hui-1992': { title: 'Y. H. Hui (ed.): Encyclopedia of Food Science and Technology (1992), boiling point rise of concentrated milk' },
  'sloan-labuza-1975': {
    title: 'A. E. Sloan, T. P. Labuza: Investigating alternative humectants for use in foods, Food Product Development 9 (1975) 75',
  },
  'flower-honeys': { title: 'Water activity of flower honeys, 15.0 to 20.4 % water, as measured' },
  'chirife-2006': {
    title: 'J. Chirife, M. C. Zamora, A. Motto: The correlation between water activity and % moisture in honey, J. Food Eng. 72 (2006) 287',
  },
  'saturated-solutions': { title: 'Relative humidity over saturated solutions and deliquescence points at 25 °C, various measurements' },
  'syrup-42-composition': { title: 'Composition of a 42 DE acid-converted glucose syrup: 19, 14, 11, 56 % of DP 1, 2, 3 and higher' },
  'maltodextrin-isotherms': { title: 'Sorption isotherms of maltodextrins at 25 °C, as commonly reported' },
  'dextrose-equivalent': { title: 'Definition of dextrose equivalent: reducing power of the dry substance as glucose, per cent' },
} as const satisfies Record<string, Source>;
