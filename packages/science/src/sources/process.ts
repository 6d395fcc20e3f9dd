import type { Source } from '../sources.js';

/** Works behind the process models. */
export const processSources = {
  'choi-okos-1986': {
    title:
      'Y. Choi, M. R. Okos, Effects of temperature and composition on the thermal properties of foods (1986); as in ASHRAE Handbook: Refrigeration, ch. 9',
  },
  'icumsa-sucrose-density': {
    title: 'ICUMSA Methods Book, SPS-4: density of pure sucrose solutions, polynomial in mass fraction and temperature',
  },
  'kell-1975': { title: 'G. S. Kell, Density of liquid water 0 to 150 °C, J. Chem. Eng. Data 20 (1975) 97' },
  'crc-102-solutions': {
    title: 'CRC Handbook of Chemistry and Physics, 102nd ed., Concentrative properties of aqueous solutions, 20 °C',
    address: 'https://github.com/amosonabike/CRC-Solution-Properties-',
  },
  'corn-syrup-77-density': {
    title: 'Published fit of density and viscosity of a 77 % corn syrup: rho = 1404.6 - 0.5012 (T - 20), eta = 15603 T^-2.44',
  },
  'sugar-liquor-thermal': {
    title: 'Sugar-works correlations of specific heat and thermal conductivity of sugar liquor (solids B, purity P, temperature T)',
  },
  'mohos-2010-app': {
    title: 'F. Á. Mohos, Confectionery and Chocolate Engineering (2010), appendices 1 and 2',
  },
  'beckett-appendix': { title: 'S. T. Beckett (ed.), Industrial Chocolate Manufacture and Use, appendix of physical constants' },
  'foam-volume-balance': { title: 'Volume balance of an aerated mass: overrun and inclusions, worked examples of ice cream practice' },
  'maxwell-eucken': { title: 'J. C. Maxwell (1873), A. Eucken (1940): conductivity of a dispersion of spheres' },
  'incropera-5': { title: 'F. P. Incropera, D. P. DeWitt, Fundamentals of Heat and Mass Transfer, ch. 5, Transient conduction' },
  'cengel-4': { title: 'Y. A. Çengel, Heat and Mass Transfer, ch. 4, Transient heat conduction, table 4-2 and examples' },
  'geankoplis-5': { title: 'C. J. Geankoplis, Transport Processes and Unit Operations, ch. 5, Unsteady-state heat transfer, table A.4' },
  'geankoplis-7': {
    title: 'C. J. Geankoplis, Transport Processes and Unit Operations, ch. 7, Unsteady-state mass transfer',
    address: 'https://github.com/FOSSEE/Python-Textbook-Companions',
  },
  'junk-pancoast': { title: 'W. R. Junk, H. M. Pancoast, Handbook of Sugars: glucose-syrup tables of Baumé, specific gravity and solids' },
  'cashew-kernel-cp': { title: 'Measured specific heat of cashew kernels at 5 to 9 % moisture (abstract)' },
  'carslaw-jaeger-1959': { title: 'H. S. Carslaw, J. C. Jaeger, Conduction of Heat in Solids, 2nd ed. (1959)' },
} as const satisfies Record<string, Source>;
