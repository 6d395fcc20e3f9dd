import type { Source } from '../source.js';

/** Works behind the process models. */
export const processSources = {
  'coulson-richardson-6': { title: 'R. K. Sinnott: Coulson & Richardson’s Chemical Engineering, vol. 6, table 12.1, overall coefficients' },
  'mccabe-smith-harriott': {
    title: 'W. L. McCabe, J. C. Smith, P. Harriott: Unit Operations of Chemical Engineering, Evaporation, typical overall coefficients',
  },
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
  'gordon-taylor-1952': { title: 'M. Gordon, J. S. Taylor, J. Appl. Chem. 2 (1952) 493' },
  'gordon-taylor-table-2016': {
    title:
      'Table of dry glass transitions and Gordon-Taylor constants, after Encyclopedia of Food and Health (2016) vol. 1, Agglomeration, p. 76',
    address: 'https://wikipedia-fan.blogspot.com/2018/07/gordon-taylor-gleichung.html',
  },
  'fox-1956': { title: 'T. G. Fox, Bull. Am. Phys. Soc. 1 (1956) 123' },
  'couchman-karasz-1978': { title: 'P. R. Couchman, F. E. Karasz, Macromolecules 11 (1978) 117' },
  'berk-table-1-4': {
    title: 'Z. Berk, Food Process Engineering and Technology, table 1.4 (after Belitz et al. 2004), and the WLF equation',
    address: 'https://fliphtml5.com/lnym/yidm/Food_Process_Engineering_and_Technology/38',
  },
  'glass-data-base': {
    title: 'Measured glass transition temperatures of saccharides, data base',
    address: 'https://glycodata.org/GDD_DB/glass_transition_temperature',
  },
  'lactose-glass-2006': { title: 'Measured glass transition of amorphous lactose, 102 °C (abstract, PubMed 16709405)' },
  'fructose-blends': {
    title: 'Glass transition of fructose extrapolated from blends, 286 K (abstract)',
    address: 'https://scilit.com/publications/466eb7e941816a125ba966e680e007fb',
  },
  'roos-1993': { title: 'Y. H. Roos, Melting and glass transitions of low molecular weight carbohydrates, Carbohydr. Res. 238 (1993) 39' },
  'roos-2002': { title: 'Y. H. Roos, Importance of glass transition and water activity to dairy powders, Lait 82 (2002) 475' },
  'kawai-2019': { title: 'K. Kawai et al. (2019), glass transition of commercial hard candies (abstract)' },
  'sritham-2016': { title: 'E. Sritham, S. Gunasekaran (2016), sucrose-maltodextrin-sodium citrate bioglass (abstract)' },
  'wlf-1955': { title: 'M. L. Williams, R. F. Landel, J. D. Ferry, J. Am. Chem. Soc. 77 (1955) 3701' },
  vft: { title: 'H. Vogel (1921), G. S. Fulcher (1925), G. Tammann, W. Hesse (1926): temperature dependence of viscosity' },
  'rovedo-1991': { title: 'C. O. Rovedo, P. E. Viollaz, C. Suarez, J. Dairy Sci. 74 (1991) 1497: flow of dulce de leche (abstract)' },
  'krieger-dougherty-1959': { title: 'I. M. Krieger, T. J. Dougherty, Trans. Soc. Rheol. 3 (1959) 137' },
  'barra-2004': {
    title: 'G. Barra, The rheology of caramel, thesis, Nottingham (2004)',
    address: 'https://eprints.nottingham.ac.uk/11837/',
  },
  'mckinley-tripathi-2000': { title: 'G. H. McKinley, A. Tripathi, J. Rheol. 44 (2000) 653: capillary thinning of a Newtonian thread' },
  'huppert-1982': { title: 'H. E. Huppert, J. Fluid Mech. 121 (1982) 43: viscous gravity currents over a rigid horizontal surface' },
  'liu-mei-1989': { title: 'K. F. Liu, C. C. Mei, J. Fluid Mech. 207 (1989) 505: slow spreading of a sheet of Bingham fluid' },
  'honey-viscosity-table': {
    title: 'Viscosity of clover honey of 16 % moisture against temperature, beekeepers’ table',
    address: 'http://beeclubpellas.blogspot.com/2009/10/blog-post_8890.html',
  },
  'honey-viscosity-moisture': {
    title: 'Viscosity of honey against moisture at 25 °C, encyclopaedia text',
    address: 'https://ru.scribd.com/document/247112163/honey5',
  },
  'corn-syrup-viscosities': { title: 'Table of viscosities of corn syrups of 28 to 63 DE, corn refiners’ handbook, recalled' },
  'lazaridou-2004': {
    title:
      'A. Lazaridou et al., Composition, thermal and rheological behaviour of selected Greek honeys, J. Food Eng. 64 (2004) 9, abstract',
    address: 'https://www.scribd.com/document/484270515/1-s2-0-S0260877403003595-main',
  },
  'tomaszewska-gras-2015': {
    title:
      'J. Tomaszewska-Gras and co-workers, Differential scanning calorimetry for determining the thermodynamic properties of selected honeys, J. Apic. Sci. 59 (2015) 109, abstract',
    address: 'https://reference-global.com/article/10.1515/jas-2015-0012',
  },
  'honey-white': { title: 'J. W. White: viscosity of clover honey against moisture at 25 °C, as handbooks of beekeeping print it' },
  'fructose-syrup-viscosities': {
    title: 'Viscosities (26.7 °C) and refractive indices (20 °C) of fructose and dextrose syrups, refiners’ data sheets, recalled',
  },
  'kantor-1999': {
    title: 'Z. Kántor, G. Pitsi, J. Thoen, Glass transition temperature of honey, J. Agric. Food Chem. 47 (1999) 2327, abstract',
    address: 'https://datapdf.com/glass-transition-temperature-of-honey-as-a-function-of-water5f84e47de4cda732dd819a37e08ada3553054.html',
  },
  'roe-labuza-2005': {
    title: 'K. D. Roe, T. P. Labuza, Glass transition and crystallization of amorphous trehalose-sucrose mixtures (2005), abstract',
    address: 'https://informahealthcare.com/doi/full/10.1080/10942910500269824',
  },
  'honey-properties-table': {
    title: 'Average physical properties of honey at 20 °C, table 5.7 (after White 1992, Krell 1996)',
    address:
      'http://what-when-how.com/Tutorial/topic-14463duqsq/Sweeteners-Nutritional-Aspects-Applications-and-Production-Technology-155.html',
  },
  'batchelor-1977': { title: 'G. K. Batchelor, J. Fluid Mech. 83 (1977) 97: 1 + 2.5 φ + 6.2 φ²' },
  'trouton-1906': { title: 'F. T. Trouton, Proc. R. Soc. A 77 (1906) 426: extensional is three times shear viscosity' },
  'geankoplis-8': { title: 'C. J. Geankoplis, Transport Processes and Unit Operations, example 8.4-1, single-effect evaporator' },
  'geankoplis-2': { title: 'C. J. Geankoplis, Transport Processes and Unit Operations, example 2.10-1, metering of small liquid flows' },
  'incropera-9': { title: 'F. P. Incropera, D. P. DeWitt, Fundamentals of Heat and Mass Transfer, example 9.2, free convection' },
  'telis-2007': { title: 'V. R. N. Telis et al. (2007), viscosity of aqueous carbohydrate solutions, measured' },
  'common-practice': { title: 'Common practice of the trade, no source' },
  'ideal-gas': { title: 'Ideal gas law (Boyle, Gay-Lussac, Dalton)' },
  'decker-ziegler-2003': {
    title: 'N. R. Decker, G. R. Ziegler, Mechanical properties of aerated confectionery (2003), abstract',
    address: 'https://pure.psu.edu/en/publications/mechanical-properties-of-aerated-confectionery',
  },
  arrhenius: { title: 'S. Arrhenius (1889): rate against temperature' },
  'pagliarini-milk-colour': {
    title: 'E. Pagliarini, M. Vernile, C. Peri: kinetic study on colour changes in milk due to heat, abstract',
    address:
      'https://it.alljournals.cn/view_abstract.aspx?aid=A72E20E54539C9D394613D84BF6BAE39&pcid=5B3AB970F71A803DEACDC0559115BFCF0A068CD97DD29835',
  },
  'rozycki-2007': {
    title: 'S. D. Rozycki et al. (2007): colour of sweetened milk concentrates at 105 to 140 °C, abstract',
    address: 'https://daneshyari.com/en/article/2435416',
  },
  'lard-peroxide-2018': {
    title: 'Peroxide value kinetics of lard at 283 to 308 K, Korean J. Food Sci. Anim. Resour. 38(4) (2018) table 6',
    address: 'https://kosfaj.org',
  },
  'katz-labuza-1981': {
    title: 'E. E. Katz, T. P. Labuza, Effect of water activity on the sensory crispness of snack foods, J. Food Sci. 46 (1981) 403',
  },
  'sanders-ars-91039': {
    title: 'T. H. Sanders, storage of roasted peanuts at 30 °C, abstract',
    address: 'https://www.ars.usda.gov/research/publications/publication/?seqNo115=91039',
  },
  'ffa-exercise': {
    title: 'Worked exercise on accelerated shelf life: free fatty acid at three temperatures',
    address: 'https://www.scribd.com/document/657708824/Jawaban-Exercise-ASLT',
  },
  'boiling-relation': {
    title: 'Boiling of a syrup where water activity times saturation pressure equals the pressure (see the boiling models)',
  },
  'miller-hartel-2015': {
    title: 'R. Miller, R. W. Hartel, Sucrose crystallization in caramel, J. Food Eng. 153 (2015) 28, abstract and passages',
  },
  'heat-balance': { title: 'Heat balance' },
  'cengel-11': {
    title: 'Y. A. Çengel, Heat and Mass Transfer, ch. 11, Heat exchangers',
    address: 'https://github.com/FOSSEE/Python-Textbook-Companions',
  },
  'heat-transfer-tests': {
    title: 'Published test values of heat exchanger and convection formulas in an open heat transfer library',
    address: 'https://github.com/CalebBell/ht',
  },
  'cengel-9': { title: 'Y. A. Çengel, Heat and Mass Transfer, ch. 9, Natural convection, example 9-1' },
  'incropera-7': { title: 'F. P. Incropera, D. P. DeWitt, Fundamentals of Heat and Mass Transfer, ch. 7, External flow' },
  'churchill-chu-1975': { title: 'S. W. Churchill, H. H. S. Chu, Int. J. Heat Mass Transfer 18 (1975) 1049 and 1323' },
  'churchill-bernstein-1977': { title: 'S. W. Churchill, M. Bernstein, J. Heat Transfer 99 (1977) 300' },
  'hagen-poiseuille': { title: 'G. Hagen (1839), J. L. M. Poiseuille (1840): laminar pipe flow' },
  'crank-1975': { title: 'J. Crank, The Mathematics of Diffusion, 2nd ed. (1975)' },
  'labuza-hyman-1998': {
    title: 'T. P. Labuza, C. R. Hyman, Moisture migration and control in multi-domain foods, Trends Food Sci. Technol. 9 (1998) 47',
  },
  'two-layer-reference': { title: 'Own reference solutions of the linear two-layer problem: 1200 cells, exact in time' },
  'film-maker-table': { title: 'Film maker’s table of water vapour transmission, g per 100 square inches and day, converted by 15.5' },
  'ldpe-packaging-study': { title: 'Packaging study: water vapour transmission of 60 µm LDPE at 38 °C and 90 %' },
  'biquet-labuza-1988': {
    title:
      'B. Biquet, T. P. Labuza, Evaluation of the moisture permeability characteristics of chocolate films, J. Food Sci. 53 (1988) 989, abstract',
    address: 'https://experts.umn.edu/en/publications/evaluation-of-the-moisture-permeability-characteristics-of-chocol',
  },
  'us-5130150': { title: 'US patent 5130150: edible moisture barrier of fat and wax', address: 'http://www.google.com/patents/US5130150' },
  'hagenmaier-shaw-1990': {
    title:
      'R. D. Hagenmaier, P. E. Shaw, Moisture permeability of edible films made with fatty acid and HPMC, J. Agric. Food Chem. 38 (1990) 1799, abstract',
    address: 'https://datapdf.com/moisture-permeability-of-edible-films-made-with-acs-publicat.html',
  },
  'iso-15106': { title: 'ISO 15106: Plastics, film and sheeting, determination of water vapour transmission rate (definitions)' },
  'labuza-packaging': { title: 'T. P. Labuza: moisture gain of packed foods with a straight isotherm; packaging lecture, slide 48' },
  fick: { title: 'A. Fick (1855): diffusion' },
} as const satisfies Record<string, Source>;
