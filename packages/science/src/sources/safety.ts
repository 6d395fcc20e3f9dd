import type { Source } from '../source.js';

/** Works behind the safety models and the statistics they use. */
export const safetySources = {
  'common-practice': { title: 'Common practice, no source' },
  // Mathematics and sampling
  'abramowitz-stegun-1964': { title: 'M. Abramowitz, I. A. Stegun, Handbook of Mathematical Functions (1964), ch. 6, 7 and 26' },
  'wichura-1988': {
    title: 'M. J. Wichura, Algorithm AS 241: The percentage points of the normal distribution, Applied Statistics 37 (1988) 477',
  },
  'clopper-pearson-1934': { title: 'C. J. Clopper, E. S. Pearson, The use of confidence or fiducial limits, Biometrika 26 (1934) 404' },
  'nist-e-handbook': {
    title: 'NIST/SEMATECH e-Handbook of Statistical Methods, section 6.2.3.2',
    address: 'https://www.itl.nist.gov/div898/handbook/pmc/section2/pmc232.htm',
  },
  'iso-2859-1': { title: 'ISO 2859-1, Sampling procedures for inspection by attributes, part 1' },
  'mil-std-105e': {
    title: 'MIL-STD-105E (1989), Sampling procedures and tables for inspection by attributes, tables I and II-A',
    address: 'http://www.nibs.org/FMOC/DPW_AC/AC-TABLE.ASC',
  },
  'mil-std-414': { title: 'MIL-STD-414 (1957), Sampling procedures and tables for inspection by variables, table B-5' },
  'cfr-7-42-140': { title: '7 CFR 42.140, Operating characteristic curves for on-line and lot sampling' },
  'uk-si-1996-2636': {
    title: 'UK Statutory Instrument 1996/2636, schedule 2',
    address: 'https://legislation.gov.uk/uksi/1996/2636/schedule/made/data.html',
  },
  'icmsf-7': { title: 'ICMSF, Microorganisms in Foods 7: Microbiological testing in food safety management' },
  // Cocoa intake
  'iso-2451-2016': { title: 'ISO 2451:2016 Cocoa beans: Specification and quality requirements, clauses 5.2.x as extracted' },
  'iso-2451-2014': { title: 'ISO 2451:2014 Cocoa beans: Specification, text extract', address: 'https://ulstandardspdf.com/?p=4038' },
  'iso-1114-1977': {
    title: 'ISO 1114:1977 Cocoa beans: Cut test (abstract)',
    address: 'https://www.nen.nl/NEN-Shop/Norm/ISO-11141977-en.htm',
  },
  'cocoa-grade-standard': { title: 'International cocoa standard, cut-test limits of grades 1 and 2, as quoted on two trade pages' },
  'cocoa-quality-guide': {
    title: 'Cocoa Beans: Chocolate and cocoa industry quality requirements, section 3.2',
    address: 'https://qm.cocoaquality.eu',
  },
  'bart-plange-2003': {
    title: 'A. Bart-Plange, E. A. Baryeh, The physical properties of category B cocoa beans, J. Food Eng. 60 (2003) 219 (abstract)',
  },
  'haider-levenspiel-1989': {
    title:
      'A. Haider, O. Levenspiel, Drag coefficient and terminal velocity of spherical and nonspherical particles, Powder Technology 58 (1989) 63',
  },
  'gunn-kinzer-1949': {
    title: 'R. Gunn, G. D. Kinzer, The terminal velocity of fall for water droplets in stagnant air, J. Meteorol. 6 (1949) 243',
  },
  'wheat-terminal-velocity': { title: 'Relation between moisture and terminal velocity of wheat (Sakha 93) and barley grains (abstract)' },
  'womac-stem': { title: 'A. Womac and others, Terminal velocity of wheat stem nodes versus internodes (abstract), doi 10.13031/ja.15580' },
  'khoshtaghaza-wheat': {
    title: 'M. H. Khoshtaghaza, R. Mehdizadeh, Aerodynamic properties of wheat kernel and straw materials (abstract)',
  },
  geankoplis: {
    title: 'C. J. Geankoplis, Transport Processes and Unit Operations, 3rd ed., ch. 9 and 14, worked examples as in a companion notebook',
    address: 'https://github.com/FOSSEE/Python-Textbook-Companions',
  },
  'coulson-richardson-2': {
    title: 'J. M. Coulson, J. F. Richardson, Chemical Engineering vol. 2, ch. 2 and 3, worked examples as in a companion notebook',
    address: 'https://github.com/FOSSEE/Python-Textbook-Companions',
  },
  'cfr-21-163-110': { title: '21 CFR 163.110 Cacao nibs' },
  // Contaminants
  'eu-2023-915': {
    title: 'Commission Regulation (EU) 2023/915 on maximum levels for certain contaminants in food',
    address: 'https://eur-lex.europa.eu/legal-content/en/TXT/?uri=CELEX%3A32023R0915',
  },
  'eu-2024-1987': {
    title: 'Commission Regulation (EU) 2024/1987 amending Regulation (EU) 2023/915 as regards maximum levels of nickel',
    address: 'https://eur-lex.europa.eu/legal-content/EN/TXT/?uri=OJ%3AL_202401987',
  },
  'gb-2761': { title: 'GB 2761-2017, Maximum levels of mycotoxins in foods (China)' },
  'anvisa-rdc-7-2011': { title: 'ANVISA, Resolution RDC 7 of 18 February 2011 and normative instructions that follow it (Brazil)' },
  'fsanz-schedule-19': { title: 'Australia New Zealand Food Standards Code, Schedule 19, Maximum levels of contaminants' },
  'fda-lead-candy-2006': { title: 'US FDA, Lead in candy likely to be consumed frequently by small children, guidance (2006)' },
  'eu-2022-1370': {
    title: 'Commission Regulation (EU) 2022/1370, ochratoxin A',
    address: 'https://www.produktqualitaet.com/en/new-maximum-levels-for-ochratoxin-a-10-2022.html',
  },
  'eu-2015-1933': { title: 'Commission Regulation (EU) 2015/1933 and the PAH section of Regulation (EC) No 1881/2006' },
  'codex-cxs-193': { title: 'CXS 193-1995 General standard for contaminants and toxins in food and feed; CODEX STAN 209-1999' },
  'fda-defect-levels': { title: 'US FDA, Food Defect Levels Handbook' },
  'fda-cpg-515-775': {
    title: 'US FDA Compliance Policy Guides 515.700 to 515.775: cocoa beans and cocoa powder, mould, insects and filth',
    address:
      'https://www.fda.gov/regulatory-information/search-fda-guidance-documents/cpg-sec-515775-cocoa-powder-press-cake-adulteration-insect-and-rodent-filth',
  },
  'aflatoxin-tolerances-2016': {
    title: 'International aflatoxin tolerances, industry backgrounder, October 2016',
    address: 'https://docslib.org/doc/1265310/international-aflatoxin-tolerances',
  },
  // Peanuts
  'whitaker-1974': {
    title: 'T. B. Whitaker, J. W. Dickens, R. J. Monroe, Variability of aflatoxin test results, J. Am. Oil Chem. Soc. 51 (1974) 214',
  },
  'whitaker-1992': {
    title:
      'T. B. Whitaker and others, Variability associated with chemically testing screened farmers stock peanuts for aflatoxin, Peanut Science 19 (1992) (abstract)',
    address: 'https://peanut-science.com/article/id/585/print/',
  },
  'whitaker-slate-2012': {
    title: 'T. B. Whitaker, A. B. Slate, Comparing the subsampling mill to a vertical cutter mixer, Peanut Science 39 (2012) 69 (abstract)',
  },
  'codex-treenut-plan': {
    title: 'Codex sampling plans for aflatoxins in almonds, hazelnuts, pistachios and Brazil nuts, annex on variances',
  },
  'jaoac-2007-almond': {
    title: 'Distribution of aflatoxin in almonds, J. AOAC Int. 90 (2007) 778 (abstract)',
    address: 'https://pubmed.ncbi.nlm.nih.gov/17580630/',
  },
  'johansson-thesis': {
    title:
      'A. S. Johansson, Methods to evaluate aflatoxin sampling plans for shelled corn, thesis, North Carolina State University (abstract)',
  },
  'peanut-science-1975-sort': { title: 'Efficacy of electronic colour sorting to remove aflatoxin, Peanut Science 2 (1975) 45 (abstract)' },
  'peanut-science-1997-blanching': {
    title: 'Blanching and electronic colour sorting of 8911 lots, Peanut Science 24 (1997) 62 (abstract)',
  },
  'cfr-7-996-31': { title: '7 CFR 996.31(a) Outgoing quality standards of peanuts' },
  'cid-a-a-20164': { title: 'US commercial item description A-A-20164D, table II' },
  // Roasting
  'garcia-alamilla-2017': {
    title: 'P. Garcia-Alamilla and others, Cocoa roasting in a rotary roaster, J. Food Quality 2017, 2969324, table 2',
    address: 'https://www.hindawi.com/journals/jfq/2017/2969324/',
  },
  'weissburg-2024': {
    title:
      'J. R. Weissburg, L. L. Dean, K. W. Hendrix, Changes in runner peanut quality as a function of roast times, Peanut Science 51 (2024) (abstract)',
    address: 'https://peanutscience.com/article/id/1611/',
  },
  'sanders-1998': {
    title: 'T. H. Sanders, Pre-roast moisture and peanut shelf life (1998 abstract)',
    address: 'https://www.ars.usda.gov/research/publications/publication/?seqNo115=91039',
  },
  'ndukwu-2010': {
    title: 'M. C. Ndukwu and others, Cocoa bean drying kinetics, Chilean J. Agric. Res. 70 (2010) 633 (abstract)',
    address: 'http://www.bioline.org.br/request?cj10071',
  },
  'hii-2009': { title: 'C. L. Hii, C. L. Law, M. Cloke, S. Suzannah, Thin layer drying of cocoa, Biosyst. Eng. 102 (2009) 153 (abstract)' },
  'furan-hazelnut-2020': { title: 'Furan formation in roasted hazelnuts, Food Chem. 331 (2020) 127338 (abstract)' },
  'wakao-1979': { title: 'N. Wakao, S. Kaguei, T. Funazkri, Heat transfer in packed beds, Chem. Eng. Sci. 34 (1979) 325' },
  // Pathogens
  'bigelow-1921': { title: 'W. D. Bigelow, The logarithmic nature of thermal death time curves, J. Infect. Dis. 29 (1921) 528' },
  'lethality-worked-example': {
    title: 'Process lethality determination, worked example: Salmonella in lean beef, z 10 °F, D 0.172 min at 150 °F',
  },
  'yan-2021': {
    title: 'R. Yan and others, Thermal inactivation of Salmonella Oranienburg during cocoa roasting, Front. Microbiol. 12 (2021) 576337',
    address: 'https://www.frontiersin.org/journals/microbiology/articles/10.3389/fmicb.2021.576337/full',
  },
  'tsai-2019': {
    title:
      'H.-C. Tsai and others, Enterococcus faecium as a surrogate for Salmonella in cocoa powder, Food Microbiol. 82 (2019) 135 (abstract)',
  },
  'iafp-2017-cocoa-powder': {
    title: 'Salmonella and Enterococcus faecium in cocoa powder, IAFP 2017 abstract',
    address: 'https://iafp.confex.com/iafp/2017/webprogram/Paper15520.html',
  },
  'iafp-2017-listeria': {
    title: 'Thermal resistance of Listeria monocytogenes in cocoa powder, IAFP 2017 abstract',
    address: 'https://iafp.confex.com/iafp/2017/webprogram/Paper15501.html',
  },
  'iafp-2017-peanut-butter': {
    title: 'Thermal resistance of Enterococcus faecium and Salmonella in peanut butter, two laboratories, IAFP 2017 abstract',
    address: 'https://iafp.confex.com/iafp/2017/webprogram/Paper14640.html',
  },
  'milk-powder-storage': {
    title: 'Effect of storage time on the thermal resistance of Salmonella and Enterococcus faecium NRRL B-2354 in milk powders (abstract)',
  },
  'goepfert-biggie-1968': {
    title: 'J. M. Goepfert, R. A. Biggie, Heat resistance of Salmonella in milk chocolate, Appl. Microbiol. 16 (1968) 1939',
  },
  'iafp-2016-bacillus': {
    title: 'Spores of Bacillus cereus on cocoa nibs, IAFP 2016 abstract',
    address: 'https://iafp.confex.com/iafp/2016/webprogram/Paper12231.html',
  },
  'pelaez-2020': { title: 'Pelaez and others, Salmonella enterica in flowing peanut butter, LWT 129 (2020) 109507' },
  'cookie-dough-stec': { title: 'Thermal resistance of STEC, Salmonella and E. faecium in cookie doughs (abstract)' },
  'krapf-2010': {
    title: 'T. Krapf, C. Gantenbein-Demarchi, Thermal inactivation of Salmonella during conching, LWT 43 (2010) 720 (abstract)',
    address: 'https://digitalcollection.zhaw.ch/handle/11475/6542',
  },
  'sun-2022': { title: 'S. Sun and others, Salmonella Enteritidis PT30 in milk chocolate, Food Control (2022) 109292 (abstract)' },
  'barrile-cone-1970': {
    title:
      'J. C. Barrile, J. F. Cone, Effect of added moisture on the heat resistance of Salmonella in milk chocolate, Appl. Microbiol. 19 (1970) 177, as quoted in a review',
  },
  'farakos-2013': {
    title:
      'S. M. Santillana Farakos, J. F. Frank, D. W. Schaffner, Salmonella survival in low-moisture foods, Int. J. Food Microbiol. (2013)',
  },
  'poirier-2014': {
    title:
      'D. Poirier, T. H. Sanders, J. P. Davis, Salmonella surrogate reduction using industrial peanut dry roasting parameters, Peanut Science 41 (2014) (abstract)',
    address: 'https://peanutscience.com/article/id/1180/print/',
  },
  'sanders-calhoun-2014': {
    title: 'T. H. Sanders, R. S. Calhoun, Effect of oil and dry roasting of peanuts on Salmonella, Peanut Science 41 (2014) 65 (abstract)',
    address: 'https://peanutscience.com/article/id/1177/',
  },
  'chocolate-5-log-text': {
    title: 'Text citing one study of Salmonella in milk chocolate: more than 6 h at 90 °C and 30 h at 71 °C for 5 log',
  },
  'fr-74-50681': { title: '74 Federal Register 50681 (1 October 2009), almonds, 4 log reduction of Salmonella' },
  'codex-cxc-1': { title: 'CXC 1-1969 General principles of food hygiene, HACCP annex' },
  'codex-cxc-75': { title: 'CXC 75-2015 Code of hygienic practice for low-moisture foods' },
  // Grinding
  'rosin-rammler-1933': { title: 'P. Rosin, E. Rammler, The laws governing the fineness of powdered coal, J. Inst. Fuel 7 (1933) 29' },
  'hatch-choate-1929': {
    title:
      'T. Hatch, S. P. Choate, Statistical description of the size properties of non-uniform particulate substances, J. Franklin Inst. 207 (1929) 369',
  },
  'bond-1952': { title: 'F. C. Bond, The third theory of comminution, Trans. AIME 193 (1952) 484' },
  'alamprese-2007': {
    title:
      'C. Alamprese, L. Datei, Q. Semeraro, Optimization of a ball mill refiner for chocolate, J. Food Eng. 83 (2007) 629, with its data set',
    address: 'https://github.com/cran/desire',
  },
  'talbot-2008': { title: 'G. Talbot and others, Effect of refining and conching on chocolate properties (2008)' },
  'breen-2019': {
    title:
      'S. P. Breen and others, Oral somatosensatory acuity is related to particle size perception in chocolate, Sci. Rep. 9 (2019) 7437 (abstract)',
  },
  'de-pelsmaeker-2020': {
    title: 'S. De Pelsmaeker and others, Particle size detection in chocolate, Br. Food J. 122 (2020) 2757 (abstract)',
  },
  // Hazards
  'food-dust-2017': {
    title: 'Hazards of explosion and ignition of food dusts (2017, abstract)',
    address: 'http://koreascience.or.kr/article/JAKO201730049559379.page',
  },
  'sucrose-dust-2022': {
    title: 'Sucrose dust explosion, Energies 15 (2022) 1439 (abstract)',
    address: 'https://mdpi.com/1996-1073/15/4/1439',
  },
  'nfpa-68': { title: 'Standard on explosion protection by deflagration venting, table of agricultural dusts' },
  'iso-6184-1': { title: 'ISO 6184-1:1985 Explosion protection systems: explosion indices of combustible dusts in air' },
  'kst-screening-page': { title: 'Screening correlation of Kst with Pmax, as printed on a page on dust tests' },
  'usbm-ri-5753': {
    title: 'M. Jacobson and others, Explosibility of agricultural dusts, US Bureau of Mines, Report of Investigations 5753 (1961)',
  },
  'iso-13732-1': {
    title: 'ISO 13732-1:2006 Ergonomics of the thermal environment: contact with surfaces, part 1, hot surfaces',
  },
  'moritz-henriques-1947': {
    title: 'A. R. Moritz, F. C. Henriques, Studies of thermal injury II, Am. J. Pathol. 23 (1947) 695, as quoted on a page',
  },
  'fda-cpg-555-425': { title: 'US FDA Compliance Policy Guide 555.425, Foods: adulteration involving hard or sharp foreign objects' },
  'fao-who-2022-allergens': { title: 'FAO/WHO Expert consultation on risk assessment of food allergens, part 2 (2022)' },
  'fasfc-2017-allergens': { title: 'Belgian food agency advice 24-2017, allergen reference doses' },
  'zhang-2024': { title: 'L. Zhang and others, Push-through of milk residue by dark chocolate, J. Food Prot. (2024) 100346 (abstract)' },
  'zhang-thesis': { title: 'L. Zhang, Dry cleaning of milk chocolate lines, thesis, Illinois Institute of Technology (abstract)' },
} as const satisfies Record<string, Source>;
