import type { Source } from '../source.js';

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
  'icumsa-sps-3': { title: 'ICUMSA Methods Book, SPS-3: refractive index of sucrose solutions at 20 °C and 589 nm' },
  'iso-1743': {
    title: 'ISO 1743: Glucose syrup, determination of dry matter content, refractive index method (table of the first edition)',
    address:
      'https://meganorm.ru/mega_doc/norm/gost-r_gosudarstvennyj-standart/21/gost_r_50546-93_iso_1743-73_gosudarstvennyy_standart.html',
  },
  'invert-refractometer-rule': {
    title: 'Trade rule: a sucrose refractometer reads 0.022 low for each per cent of invert sugar (common practice, no source)',
  },
  'baume-145': { title: 'Baumé scale for liquids heavier than water, modulus 145' },
  'brix-baume-table': { title: 'Table of degrees Brix and Baumé of sucrose solutions at 20 °C' },
  'junk-pancoast-1973': {
    title: 'W. R. Junk, H. M. Pancoast: Handbook of Sugars (1973), Baumé and dry solids of glucose syrups',
    address: 'https://nguyenstarch.com/brix-degrees-brix-glucose-syrups-properties/',
  },
  'vavrinecz-1962': { title: 'G. Vavrinecz: Neue Tabelle über die Löslichkeit reiner Saccharose in Wasser, Z. Zuckerind. 12 (1962) 481' },
  'charles-1960': { title: 'D. F. Charles: Solubility of pure sucrose in water, Int. Sugar J. 62 (1960) 126' },
  'sucrose-properties-page': {
    title: 'Property page on sucrose: solubility 0 to 140 °C',
    address: 'https://k-mashzavod.narod.ru/SvoystvaSaharozi5.htm',
  },
  'hudson-1908': { title: 'C. S. Hudson: Further studies on the forms of milk-sugar, J. Am. Chem. Soc. 30 (1908) 1767' },
  'gillis-1920': {
    title: 'J. Gillis: Solubility of maltose in water, as quoted in Experimental Cookery',
    address: 'http://chestofbooks.com/food/science/Experimental-Cookery/Solubility-Of-Maltose-In-Water-gillis.html',
  },
  'hartel-2011': {
    title:
      'R. W. Hartel, R. Ergun, S. Vogel: Phase/state transitions of confectionery sweeteners, Compr. Rev. Food Sci. Food Saf. 10 (2011) 17',
  },
  'wiklund-vavrinecz': {
    title: 'O. Wiklund; G. Vavrinecz: saturation function of impure sugar solutions, as in an instrument maker’s appendix',
  },
  'coulson-richardson-2': { title: 'J. M. Coulson, J. F. Richardson: Chemical Engineering, vol. 2, ch. 15, Crystallisation' },
  'vukov-1965': { title: 'K. Vukov: Kinetic aspects of sucrose hydrolysis, Int. Sugar J. 67 (1965) 172' },
  'genotelle-bubnik': {
    title:
      'J. Génotelle (1978); Z. Bubník, P. Kadlec, D. Urban, M. Bruhns: Sugar Technologists Manual (1995), viscosity of sucrose solutions',
  },
  'telis-2007': {
    title:
      'V. R. N. Telis, J. Telis-Romero, H. B. Mazzotti, A. L. Gabas: Viscosity of aqueous carbohydrate solutions, Int. J. Food Prop. 10 (2007) 185',
  },
  gab: { title: 'E. A. Guggenheim, R. B. Anderson, J. H. de Boer: sorption isotherm of three constants' },
  'bet-1938': {
    title: 'S. Brunauer, P. H. Emmett, E. Teller: Adsorption of gases in multimolecular layers, J. Am. Chem. Soc. 60 (1938) 309',
  },
  'berk-bet-example': {
    title: 'Z. Berk: Food Process Engineering and Technology, worked BET example',
    address: 'https://fliphtml5.com/lnym/yidm/Food_Process_Engineering_and_Technology/36',
  },
  oswin: { title: 'C. R. Oswin: The kinetics of package life, J. Soc. Chem. Ind. 65 (1946) 419' },
  'cocoa-isotherm-study': { title: 'Sorption isotherms of cocoa bean and shell at 25 °C, GAB fits' },
  'bull-1944': {
    title:
      'H. B. Bull: Adsorption of water vapor by proteins, J. Am. Chem. Soc. 66 (1944) 1499; and isotherms of starch and fibre as collected by Iglesias and Chirife (1982)',
  },
  'lactose-isotherms': { title: 'Y. H. Roos (2002) and others: sorption of amorphous lactose' },
  'material-data-pasta': {
    title: 'Andrieu 1985, Erbas 2005, Xiong 1991: isotherms of pasta and semolina, as coded in an open repository',
    address: 'https://github.com/mirrorscotty/material-data/blob/00c808c244b3e43aae7b8ac21e2c0f6388f3946f/pasta/isotherms.c',
  },
  'cereal-grains-storage': { title: 'Storage of Cereal Grains and Their Products, 5th ed., p. 272: modified Chung-Pfost constants' },
  'container-handbook': {
    title: 'Container handbook, ch. 10.2: sorption behaviour of goods',
    address: 'https://www.containerhandbuch.de/chb_e/scha/scha_10_02_08.html',
  },
  'asae-d245': { title: 'ASAE D245: Moisture relationships of plant-based agricultural products, peanut kernel' },
  'butts-2017': { title: 'C. L. Butts (2017): storage trial of peanut kernels, moisture at about 65 % relative humidity' },
  'cromarty-1982': {
    title:
      'A. S. Cromarty, R. H. Ellis, E. H. Roberts: The Design of Seed Storage Facilities for Genetic Conservation (1982), seed equilibrium moisture',
  },
  'biscuit-isotherm-2016': {
    title: 'Biscuits stored 92 days at 35 °C, Food Chem. 195 (2016) 97',
    address: 'https://pubmed.ncbi.nlm.nih.gov/26575718/',
  },
  'whole-milk-powder-isotherm': {
    title: 'L. Langova, J. Stencl (2014): sorption isotherms of whole milk powder, Acta Vet. Brno 83',
    address: 'https://actavet.vfu.cz/83/10/0035/',
  },
  'price-2014': {
    title:
      'H. C. Price and co-workers: Quantifying water diffusion in high-viscosity and glassy aqueous solutions, Atmos. Chem. Phys. 14 (2014) 3817; and PCCP (2016)',
    address: 'https://github.com/UoM-maul1609/bin-diffusion-model',
  },
  'zobrist-2011': {
    title: 'B. Zobrist, V. Soonsin, B. P. Luo and co-workers: Ultra-slow water diffusion in aqueous sucrose glasses, PCCP 13 (2011) 3514',
  },
  'lienhard-2015': {
    title: 'D. M. Lienhard and co-workers: Viscous organic aerosol particles in the upper troposphere, Atmos. Chem. Phys. 15 (2015) 13599',
    address: 'https://github.com/UoM-maul1609/bin-diffusion-model',
  },
  'gosting-morris-1949': {
    title:
      'L. J. Gosting, M. S. Morris, J. Am. Chem. Soc. 71 (1949) 1998; L. G. Longsworth, J. Am. Chem. Soc. 75 (1953) 5705: diffusion of sugars',
  },
  'hard-candy-notes': {
    title: 'Course notes on hard candy: end temperature and water',
    address: 'https://wiki.physics.wisc.edu/garage/Hard%20Candy?action=raw',
  },
  'erythritol-page': { title: 'Page on erythritol: solubility at 20, 25 and 80 °C' },
  'sorbitol-70-analyses': {
    title: 'Analyses of two lots of sorbitol solution of 70 %: dry substance, refractive index and density at 20 °C',
  },
  'icumsa-temperature-correction': { title: 'International table of temperature corrections of the refractometer for sucrose, 20 °C' },
  'sucrose-viscosity-report': {
    title: 'Laboratory report on sucrose solutions with literature viscosities',
    address: 'https://www.ipl.org/essay/Viscosity-Lab-Report-PCHCVDCQAWU',
  },
  'ribeiro-2006': {
    title:
      'A. C. F. Ribeiro, O. Ortona, V. M. M. Lobo and co-workers: Binary mutual diffusion coefficients of aqueous solutions of sucrose, lactose, glucose, and fructose, J. Chem. Eng. Data 51 (2006) 1836',
    address: 'https://datapdf.com/binary-mutual-diffusion-coefficients-of-aqueous-solutions-of6eac27681b62d488da8c56325b7b9f7867630.html',
  },
  'polyol-solubilities': { title: 'Solubilities of polyols and trehalose in water, tables of texts on sweeteners, recalled' },
  'greenspan-1977': {
    title: 'L. Greenspan: Humidity fixed points of binary saturated aqueous solutions, J. Res. Natl. Bur. Stand. 81A (1977) 89',
  },
  'salt-values-page': { title: 'Values over saturated salts at 22.5 °C after Greenspan', address: 'https://emintech.com/1251exps.htm' },
  'food-composition-tables': { title: 'Food composition tables and dairy texts, typical values' },
  'beuchat-1981': { title: 'L. R. Beuchat (1981): chart of water activity of foods', address: 'https://docslib.org/doc/9382927' },
  'de-nevers-2012': { title: 'N. de Nevers: Physical and Chemical Equilibrium for Chemical Engineers, ch. 8, example of a sugar solution' },
  'candy-altitude-rule': { title: 'Footnote of a sugar-boiling stage table: 1 K lower per 305 m' },
  'sucrose-invert-solubility': {
    title: 'Solubility of sucrose beside invert sugar at 20 °C: 46.6 % sucrose, 25.8 % invert, 27.6 % water, as remembered',
  },
  'water-self-diffusion': { title: 'Self-diffusion of water at 23 °C' },
  'dextrose-equivalent': { title: 'Definition of dextrose equivalent: reducing power of the dry substance as glucose, per cent' },
} as const satisfies Record<string, Source>;
